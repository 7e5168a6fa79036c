using Graspwright.Hand;
using Graspwright.Page.Hands;

namespace Graspwright.Page.Drive;

/// <summary>A point of the side view that can be moved, and the values of the hand file that say where it is.</summary>
/// <param name="Key">Its key.</param>
/// <param name="Words">Its name.</param>
/// <param name="At">Where it is [m].</param>
/// <param name="Moved">The hand with the point elsewhere [m].</param>
/// <param name="Values">The values that differ, by path: SI value and dimension.</param>
public sealed record Handle(string Key, string Words, Point At, Func<Point, HandModel> Moved, Func<HandModel, IReadOnlyList<(string Path, double Si, Dimension Dimension)>> Values);

/// <summary>What of a hand can be moved on the side view.</summary>
public static class DriveHandles
{
    private const double LengthStep = 1e-4, AngleStepDegrees = 0.1, InchStep = 2.54e-5;

    /// <summary>Every handle of a hand.</summary>
    /// <param name="hand">The hand.</param>
    /// <param name="polar">Whether its file gives the input pin by arm and angle.</param>
    public static IReadOnlyList<Handle> Of(HandModel hand, bool polar = true)
    {
        ArgumentNullException.ThrowIfNull(hand);
        return [.. Mechanism(hand, polar), .. hand.Objects.Select(o => Thing(hand, o)).OfType<Handle>()];
    }

    /// <summary>A value rounded to what the page sets: tenths of a millimetre and of a degree.</summary>
    /// <param name="si">Value in SI.</param>
    /// <param name="dimension">Its dimension.</param>
    public static double Rounded(double si, Dimension dimension) => dimension == Dimension.Angle
        ? double.DegreesToRadians(Math.Round(double.RadiansToDegrees(si) / AngleStepDegrees) * AngleStepDegrees)
        : Math.Round(si / LengthStep) * LengthStep;

    /// <summary>The texts that put a moved handle into the file, in the units in which its values are written there.</summary>
    /// <param name="open">The open hand.</param>
    /// <param name="handle">The handle.</param>
    /// <param name="moved">The hand with it moved.</param>
    public static IReadOnlyList<PathValue> Texts(OpenHand open, Handle handle, HandModel moved)
    {
        ArgumentNullException.ThrowIfNull(open);
        ArgumentNullException.ThrowIfNull(handle);
        return [.. handle.Values(moved).Select(v => (v, Now: open.Find(v.Path))).Where(v => v.Now?.Si is not { } now || Math.Abs(now - v.v.Si) > 1e-9)
            .Select(v => new PathValue(v.v.Path, Text(v.v.Si, v.v.Dimension, v.Now?.Text), v.Now?.Text ?? ""))];
    }

    /// <summary>A value as text in the unit in which it was written.</summary>
    /// <param name="si">Value in SI.</param>
    /// <param name="dimension">Its dimension.</param>
    /// <param name="written">How it was written; <see langword="null"/> = not at all.</param>
    public static string Text(double si, Dimension dimension, string? written)
    {
        if (written is null || !Quantity.TryParse(written, dimension, out Quantity? quantity, out _))
        {
            return Quantity.Write(si, dimension);
        }

        double inch = Unit.Find("in") is { } unit && quantity.Unit == unit ? InchStep : 0;
        return quantity.With(inch > 0 ? Math.Round(si / inch) * inch : si);
    }

    private static IEnumerable<Handle> Mechanism(HandModel hand, bool polar)
    {
        Crank crank = hand.Crank;
        Point p = crank.Fulcrum;
        yield return new("fulcrum", "fulcrum", p, to => hand with { Crank = crank with { Fulcrum = Near(to) } }, Pair("crank.fulcrum", h => h.Crank.Fulcrum));
        yield return new("anchor", "forearm anchor", hand.PullLink.Anchor, to => hand with { PullLink = hand.PullLink with { Anchor = Near(to) } }, Pair("pull_link.anchor", h => h.PullLink.Anchor));
        yield return !polar ? new("input", "input pin", Plus(p, crank.Input), to => hand with { Crank = crank with { Input = Near(Minus(to, p)) } }, Pair("crank.input", h => h.Crank.Input))
            : new("input", "input pin", Plus(p, crank.Input), to => hand with { Crank = crank with { Input = Polar(Minus(to, p)) } },
            h => [("crank.input_arm", Length(h.Crank.Input), Dimension.Length), ("crank.input_angle", Angle(h.Crank.Input), Dimension.Angle)]);
        yield return new("output", "output pin", Plus(p, crank.Output), to => hand with { Crank = crank with { Output = Near(Minus(to, p)) } }, Pair("crank.output", h => h.Crank.Output));
        if (crank.Slot is { } slot)
        {
            // The end of an arc is seen half its turn to the side, and nearer by sin x/x, x half the turn.
            double half = slot.TurnRadians / 2, chord = half == 0 ? 1 : Math.Sin(half) / half;
            yield return new("slot", "slot’s end", Plus(Plus(p, crank.Output), Along(slot.DirectionRadians + half, chord * slot.Length)),
                to => Minus(to, Plus(p, crank.Output)) is var e ? hand with { Crank = crank with { Slot = slot with { DirectionRadians = Rounded(Math.IEEERemainder(Angle(e) - half, Math.Tau), Dimension.Angle), Length = Math.Max(LengthStep, Rounded(Length(e) / chord, Dimension.Length)) } } } : hand,
                h => [("crank.slot.direction", h.Crank.Slot!.DirectionRadians, Dimension.Angle), ("crank.slot.length", h.Crank.Slot.Length, Dimension.Length)]);
        }

        double sense = Workshop.Views.CrankSense.Of(hand);
        yield return new("stop", "crank’s stop", Plus(p, Along(Angle(crank.Input) + sense * crank.StopRadians, Length(crank.Input))),
            to => hand with { Crank = crank with { StopRadians = Math.Max(double.DegreesToRadians(AngleStepDegrees), Rounded(Turn(sense * (Angle(Minus(to, p)) - Angle(crank.Input))), Dimension.Angle)) } },
            h => [("crank.stop", h.Crank.StopRadians, Dimension.Angle)]);
        Rail rail = hand.Rail;
        yield return new("rail", "rail’s rest", rail.Rest, to => hand with { Rail = rail with { Rest = Near(to) } }, Pair("rail.rest", h => h.Rail.Rest));
        yield return new("rail-end", "rail’s end", Plus(rail.Rest, Along(rail.DirectionRadians, rail.Travel)),
            to => Minus(to, rail.Rest) is var e ? hand with { Rail = rail with { DirectionRadians = Near(Angle(e), rail.DirectionRadians), Travel = Math.Max(LengthStep, Rounded(Length(e), Dimension.Length)) } } : hand,
            h => [("rail.direction", h.Rail.DirectionRadians, Dimension.Angle), ("rail.travel", h.Rail.Travel, Dimension.Length)]);
    }

    private static Handle? Thing(HandModel hand, HandObject thing)
    {
        HandModel With(HandObject other) => hand with { Objects = [.. hand.Objects.Select(o => ReferenceEquals(o, thing) ? other : o)] };
        string path = HandPath.Join("objects", thing.Name), key = "object " + thing.Name;
        switch (thing)
        {
            case CylinderObject { Place: OnPalm place } cylinder:
                Point t = Along(hand.Palm.DirectionRadians, 1), n = new(t.Y, -t.X);
                Point centre = Plus(hand.Palm.Point, Plus(Times(place.Station, t), Times(cylinder.Diameter / 2, n)));
                return new(key, thing.Name, centre,
                    to => Minus(to, hand.Palm.Point) is var d ? With(cylinder with { Place = new OnPalm(Rounded(d.X * t.X + d.Y * t.Y, Dimension.Length)) }) : hand,
                    h => [(path + ".station", ((OnPalm)Found<CylinderObject>(h, thing).Place).Station, Dimension.Length)]);
            case CylinderObject { Place: AtCentre place } cylinder:
                return new(key, thing.Name, place.Centre, to => With(cylinder with { Place = new AtCentre(Near(to)) }), Pair(path + ".centre", h => ((AtCentre)Found<CylinderObject>(h, thing).Place).Centre));
            case PlateObject plate:
                return new(key, thing.Name, plate.Point, to => With(plate with { Point = Near(to) }), Pair(path + ".point", h => Found<PlateObject>(h, thing).Point));
            default:
                return null;
        }
    }

    private static T Found<T>(HandModel hand, HandObject thing)
        where T : HandObject => (T)hand.Objects.First(o => o.Name == thing.Name);

    private static Func<HandModel, IReadOnlyList<(string, double, Dimension)>> Pair(string path, Func<HandModel, Point> point) =>
        h => [(path + ".x", point(h).X, Dimension.Length), (path + ".y", point(h).Y, Dimension.Length)];

    private static Point Near(Point p) => new(Rounded(p.X, Dimension.Length), Rounded(p.Y, Dimension.Length));

    private static double Near(double angle, double like)
    {
        double turned = angle - Math.Tau * Math.Round((angle - like) / Math.Tau);
        return Rounded(turned, Dimension.Angle);
    }

    private static Point Polar(Point p) => Along(Rounded(Angle(p), Dimension.Angle), Math.Max(LengthStep, Rounded(Length(p), Dimension.Length)));

    private static double Turn(double angle) => angle - Math.Tau * Math.Floor(angle / Math.Tau);

    private static double Length(Point p) => double.Hypot(p.X, p.Y);

    private static double Angle(Point p) => Math.Atan2(p.Y, p.X);

    private static Point Along(double angle, double length) => new(length * Math.Cos(angle), length * Math.Sin(angle));

    private static Point Plus(Point a, Point b) => new(a.X + b.X, a.Y + b.Y);

    private static Point Minus(Point a, Point b) => new(a.X - b.X, a.Y - b.Y);

    private static Point Times(double f, Point a) => new(f * a.X, f * a.Y);
}
