using System.Globalization;
using Graspwright.Drawing.Points;

namespace Graspwright.Workshop.Points;

/// <summary>A point that was moved in the hand file.</summary>
/// <param name="From">Where it was.</param>
/// <param name="To">Where it is.</param>
public readonly record struct PointMove(NamedPoint From, NamedPoint To);

/// <summary>The named points of a hand, out to a drawing and back: fulcrum, pins, anchor, rail, palm, knuckles, placed objects.</summary>
public static class HandPoints
{
    /// <summary>Distance below which a point has not moved [mm].</summary>
    public const double SamePlaceMm = 1e-3;

    private const string Fulcrum = "fulcrum", Input = "input pin", Output = "output pin";

    /// <summary>The points of a hand, in the hand frame at rest.</summary>
    /// <param name="hand">The hand.</param>
    public static IReadOnlyList<NamedPoint> Of(Hand.HandModel hand) => [.. Places(hand).Select(p => p.Point)];

    /// <summary>Moves the points of a hand file to where a drawing has them. Points the drawing leaves out stay.</summary>
    /// <param name="editor">The hand file.</param>
    /// <param name="hand">The hand it describes.</param>
    /// <param name="drawn">The drawing's points.</param>
    /// <param name="file">Name of the drawing, for messages.</param>
    /// <returns>The edited file with what was moved, or what is wrong.</returns>
    public static (Hand.HandEditor? Edited, IReadOnlyList<PointMove> Moves, IReadOnlyList<Hand.HandError> Errors) Read(
        Hand.HandEditor editor, Hand.HandModel hand, IReadOnlyList<NamedPoint> drawn, string file)
    {
        ArgumentNullException.ThrowIfNull(editor);
        ArgumentNullException.ThrowIfNull(drawn);
        List<(NamedPoint Point, string Path)> places = Places(hand);
        List<Hand.HandError> errors = [];
        foreach (NamedPoint point in drawn.Where(d => !places.Exists(p => p.Point.Name == d.Name)))
        {
            errors.Add(new(file, 0, 0, point.Name, "a point that the hand does not have", string.Join(", ", places.Select(p => p.Point.Name)), "Rename it as the hand names it, or take it out of the drawing."));
        }

        if (errors.Count > 0)
        {
            return (null, [], errors);
        }

        NamedPoint Now(string name) => drawn.FirstOrDefault(d => d.Name == name) ?? places.Find(p => p.Point.Name == name).Point;
        List<PointMove> moves = [];
        Hand.HandEditor edited = editor;
        foreach ((NamedPoint old, string path) in places)
        {
            NamedPoint now = Now(old.Name);
            if (double.Hypot(now.XMm - old.XMm, now.YMm - old.YMm) > SamePlaceMm)
            {
                moves.Add(new(old, now));
            }
        }

        bool Moved(string name) => moves.Exists(m => m.To.Name == name);
        foreach ((NamedPoint old, string path) in places)
        {
            bool onCrank = old.Name is Input or Output;
            if (!Moved(old.Name) && !(onCrank && Moved(Fulcrum)))
            {
                continue;
            }

            NamedPoint now = Now(old.Name), origin = onCrank ? Now(Fulcrum) : new("", 0, 0);
            double x = now.XMm - origin.XMm, y = now.YMm - origin.YMm;
            bool byArm = old.Name == Input && editor.Find("crank.input_arm")?.InFile == true;
            (string Path, string Value)[] edits = byArm
                ? [("crank.input_arm", Quantity(double.Hypot(x, y), "mm")), ("crank.input_angle", Quantity(double.RadiansToDegrees(Math.Atan2(y, x)), "deg"))]
                : [(path, $"[\"{Quantity(x, "mm")}\", \"{Quantity(y, "mm")}\"]")];
            foreach ((string at, string value) in edits)
            {
                Hand.EditResult result = edited.Set(at, value);
                if (result.Editor is null)
                {
                    return (null, [], result.Errors);
                }

                edited = result.Editor;
            }
        }

        return (edited, moves, []);
    }

    private static List<(NamedPoint Point, string Path)> Places(Hand.HandModel hand)
    {
        ArgumentNullException.ThrowIfNull(hand);
        Hand.Point fulcrum = hand.Crank.Fulcrum;
        List<(NamedPoint, string)> places = [];
        void Add(string name, Hand.Point point, string path)
        {
            if (NamedPoint.IsName(name))
            {
                places.Add((new(name, Millimetres(point.X), Millimetres(point.Y)), path));
            }
        }

        Add("anchor", hand.PullLink.Anchor, "pull_link.anchor");
        Add(Fulcrum, fulcrum, "crank.fulcrum");
        Add(Input, new(fulcrum.X + hand.Crank.Input.X, fulcrum.Y + hand.Crank.Input.Y), "crank.input");
        Add(Output, new(fulcrum.X + hand.Crank.Output.X, fulcrum.Y + hand.Crank.Output.Y), "crank.output");
        Add("rail rest", hand.Rail.Rest, "rail.rest");
        Add("palm", hand.Palm.Point, "palm.point");
        foreach (Hand.Finger finger in hand.Fingers)
        {
            Add($"knuckle {finger.Name}", finger.Knuckle, $"{Hand.HandPath.Join("fingers", finger.Name)}.knuckle");
        }

        foreach (Hand.HandObject thing in hand.Objects)
        {
            string path = Hand.HandPath.Join("objects", thing.Name);
            if (thing is Hand.CylinderObject { Place: Hand.AtCentre { Centre: var centre } })
            {
                Add($"centre {thing.Name}", centre, $"{path}.centre");
            }
            else if (thing is Hand.PlateObject plate)
            {
                Add($"face {thing.Name}", plate.Point, $"{path}.point");
            }
        }

        return places;
    }

    /// <summary>Millimetres, cleared of the last digits that a change of unit leaves.</summary>
    private static double Millimetres(double metres) => Math.Round(metres * 1000, 9);

    private static string Quantity(double value, string unit) => string.Create(CultureInfo.InvariantCulture, $"{Math.Round(value, 6)} {unit}");
}
