using System.Globalization;
using Graspwright.Drawing.Display;
using Graspwright.Workshop.Drive;

namespace Graspwright.Workshop.Views;

/// <summary>A hole of the drive.</summary>
/// <param name="Number">Number in the drawing and in the table.</param>
/// <param name="Name">What goes through it.</param>
/// <param name="XMm">Along the drawing's first axis [mm].</param>
/// <param name="YMm">Along the drawing's second axis [mm].</param>
/// <param name="DiameterMm">Diameter of the pin [mm]; 0 = the hand file gives none.</param>
public readonly record struct Hole(int Number, string Name, double XMm, double YMm, double DiameterMm);

/// <summary>A piece with its holes.</summary>
/// <param name="Name">Name of the piece.</param>
/// <param name="Datum">Where its coordinates count from, in words.</param>
/// <param name="Holes">Its holes.</param>
/// <param name="Drawing">The piece at full size.</param>
public sealed record HolePiece(string Name, string Datum, IReadOnlyList<Hole> Holes, Picture Drawing);

/// <summary>Holes of the drive at full size: plate of the hand, crank, bars, forearm.</summary>
public static class HoleDrawing
{
    private const double Margin = 14;
    private const double Letters = 2.2;
    private const double MostRadius = 0.08; // m: the centre of a flatter arc is off the page
    private const int ArcPieces = 12; // straight pieces in which an arc is drawn

    /// <summary>Every piece of a hand.</summary>
    /// <param name="hand">The hand.</param>
    public static IReadOnlyList<HolePiece> Pieces(Hand.HandModel hand)
    {
        ArgumentNullException.ThrowIfNull(hand);
        var pieces = new List<HolePiece> { Plate(hand), Crank(hand), Forearm(hand) };
        pieces.AddRange(Bars(hand.Balance).Select(Bar));
        return pieces;
    }

    private static HolePiece Plate(Hand.HandModel hand)
    {
        var holes = new Holes();
        Hand.Point wrist = hand.Gimbal?.Offset ?? default;
        holes.Add(hand.Gimbal is null ? "wrist axis, no hole" : "wrist pin", wrist, hand.Gimbal?.Pin.Radius ?? 0);
        holes.Add("fulcrum", hand.Crank.Fulcrum, hand.Crank.FulcrumPin.Radius);
        holes.Add("carriage pin at rest", hand.Rail.Rest, hand.TransferLink.CarriagePin.Radius);
        Hand.Point end = new(hand.Rail.Rest.X + hand.Rail.Travel * Math.Cos(hand.Rail.DirectionRadians), hand.Rail.Rest.Y + hand.Rail.Travel * Math.Sin(hand.Rail.DirectionRadians));
        holes.Add("carriage pin at the end of its rail", end, hand.TransferLink.CarriagePin.Radius);
        foreach (Hand.Finger finger in hand.Fingers)
        {
            holes.Add($"knuckle of the {finger.Name}", finger.Knuckle, finger.PinRadius.First);
        }

        return Draw("plate of the hand, seen from the thumb's side", "wrist's axis; distal to the right, dorsal up", holes.All, line: [holes.All[2], holes.All[3]]);
    }

    private static HolePiece Crank(Hand.HandModel hand)
    {
        var holes = new Holes();
        Hand.Crank crank = hand.Crank;
        holes.Add("fulcrum", default, crank.FulcrumPin.Radius);
        holes.Add("input pin", crank.Input, hand.PullLink.CrankPin.Radius);
        holes.Add(crank.Slot is null ? "output pin" : "output pin, slot begins", crank.Output, crank.OutputPin.Radius);
        IReadOnlyList<Hole>? slot = null;
        if (crank.Slot is { } s)
        {
            Mechanics.Drive.Slot path = DriveMapping.ToSlot(s);
            string ends = s.TurnRadians == 0 ? "output pin, slot ends" : FormattableString.Invariant($"output pin, slot ends, an arc of {Math.Abs(1000 / path.Curvature):0.0} mm radius");
            int pieces = s.TurnRadians == 0 ? 1 : ArcPieces;
            Numerics.Vector2D[] way = [.. Enumerable.Range(0, pieces + 1).Select(i => DriveMapping.ToVector(crank.Output) + path.At(s.Length * i / pieces))];
            holes.Add(ends, new(way[^1].X, way[^1].Y), crank.OutputPin.Radius);
            if (s.TurnRadians != 0 && Math.Abs(1 / path.Curvature) < MostRadius)
            {
                // Along the normal to the left of where the slot begins, by 1/κ.
                Numerics.Vector2D centre = way[0] + 1 / path.Curvature * path.Along(0).Perpendicular;
                holes.Add("centre of the slot's arc, no hole", new(centre.X, centre.Y), 0);
            }

            slot = [.. way.Select(v => new Hole(0, "", 1000 * v.X, 1000 * v.Y, 0))];
        }

        return Draw("bell crank, as it stands at rest", "fulcrum; distal to the right, dorsal up", holes.All, slot);
    }

    private static HolePiece Forearm(Hand.HandModel hand)
    {
        var holes = new Holes();
        holes.Add("wrist's axis", hand.Gimbal?.Offset ?? default, hand.Gimbal?.Pin.Radius ?? 0);
        holes.Add("anchor of the pull link", hand.PullLink.Anchor, hand.PullLink.AnchorPin.Radius);
        return Draw("cuff, at the start posture", "wrist's axis; distal to the right, dorsal up", holes.All, line: null);
    }

    private static HolePiece Bar(Hand.BalanceBar bar)
    {
        var holes = new Holes();
        holes.Add("pivot", default, bar.PivotPin.Radius);
        holes.Add($"first end ({Carries(bar.First)})", new(-bar.FirstArm, 0), bar.FirstPinRadius);
        holes.Add($"second end ({Carries(bar.Second)})", new(bar.SecondArm, 0), bar.SecondPinRadius);
        return Draw($"balance bar, {bar.Name}", "pivot; along the bar", holes.All, line: [holes.All[1], holes.All[2]]);
    }

    private static string Carries(Hand.BalanceNode node) => node is Hand.BalanceBar bar ? bar.Name : ((Hand.FingerLeaf)node).Finger;

    private static IEnumerable<Hand.BalanceBar> Bars(Hand.BalanceNode node) => node is Hand.BalanceBar bar ? [bar, .. Bars(bar.First), .. Bars(bar.Second)] : [];

    private static HolePiece Draw(string name, string datum, IReadOnlyList<Hole> holes, IReadOnlyList<Hole>? line)
    {
        double left = holes.Min(h => h.XMm - h.DiameterMm / 2) - Margin, bottom = holes.Min(h => h.YMm - h.DiameterMm / 2) - Margin;
        double right = holes.Max(h => h.XMm + h.DiameterMm / 2) + Margin, top = holes.Max(h => h.YMm + h.DiameterMm / 2) + Margin;
        var picture = new Picture(right - left, top - bottom, name, $"Holes of the {name} at full size, numbered as in the table.");
        if (line is [var from, var to])
        {
            picture.OnLayer("lines").Line(At(from), At(to), Pen.Hair with { Dash = Dash.DashDot });
        }
        else if (line is not null)
        {
            picture.OnLayer("lines").Polyline([.. line.Select(At)], Pen.Hair with { Dash = Dash.DashDot });
        }

        var taken = new List<Place>();
        foreach (IGrouping<(double, double), Hole> same in holes.GroupBy(h => (Math.Round(h.XMm, 3), Math.Round(h.YMm, 3))))
        {
            Hole hole = same.First();
            Place centre = At(hole);
            double radius = hole.DiameterMm / 2, arm = radius + 2.5;
            picture.OnLayer("holes");
            if (radius > 0)
            {
                picture.Circle(centre, radius, Pen.Thin);
            }

            picture.Line(centre.Moved(-arm, 0), centre.Moved(arm, 0), Pen.Hair);
            picture.Line(centre.Moved(0, -arm), centre.Moved(0, arm), Pen.Hair);
            string numbers = string.Join(", ", same.Select(h => h.Number.ToString(CultureInfo.InvariantCulture)));
            Place label = Free(centre, arm, holes.Where(h => h.Number != hole.Number).Select(At), taken);
            taken.Add(label);
            picture.OnLayer("numbers");
            if (label.DistanceTo(centre) > arm + 2.6)
            {
                double back = label.DirectionTo(centre);
                picture.Line(label.Toward(back, 1.8), centre.Toward(back + Math.PI, arm), Pen.Hair);
            }

            picture.Text(label, numbers, Letters, Across.Middle, Level.Middle, strong: true);
        }

        return new(name, datum, holes, picture);

        Place At(Hole h) => new(h.XMm - left, h.YMm - bottom);
    }

    // The nearest place round a hole that is clear of other holes and numbers.
    private static Place Free(Place centre, double arm, IEnumerable<Place> others, List<Place> taken)
    {
        Place[] near = [.. others];
        Place best = default;
        double most = double.NegativeInfinity;
        for (double away = arm + 1.8; away <= arm + 9; away += 1.8)
        {
            for (int turn = 0; turn < 16; turn++)
            {
                Place place = centre.Toward(Math.PI / 4 + turn * Math.PI / 8, away);
                double room = Math.Min(near.Select(o => o.DistanceTo(place) - 2).DefaultIfEmpty(9).Min(), taken.Select(t => t.DistanceTo(place)).DefaultIfEmpty(9).Min());
                double worth = Math.Min(room, 4) - 0.35 * away;
                if (worth > most + 1e-9)
                {
                    (best, most) = (place, worth);
                }
            }
        }

        return best;
    }

    private sealed class Holes
    {
        public List<Hole> All { get; } = [];

        public void Add(string name, Hand.Point at, double radius) =>
            All.Add(new(All.Count + 1, name, Math.Round(1000 * at.X, 6), Math.Round(1000 * at.Y, 6), Math.Round(2000 * radius, 6)));
    }
}
