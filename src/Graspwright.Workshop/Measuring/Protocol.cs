using Graspwright.Hand;

namespace Graspwright.Workshop.Measuring;

/// <summary>A line of the empty sheet.</summary>
/// <param name="Measurement">What is measured.</param>
/// <param name="Where">Place, posture, direction or share.</param>
/// <param name="When">Morning, evening, loading, unloading, or nothing.</param>
/// <param name="AngleDegrees">Wrist angle or angle swept [deg]; NaN where none belongs.</param>
/// <param name="Try">Number of the try.</param>
public sealed record ProtocolLine(Measurement Measurement, string Where = "", string When = "", double AngleDegrees = double.NaN, int Try = 1)
{
    /// <summary>Dimension of the value.</summary>
    public Dimension Dimension => Measurement switch
    {
        Measurement.Flexion or Measurement.Extension or Measurement.ThumbPinch or Measurement.Give => Dimension.Force,
        Measurement.Hold or Measurement.TenBends => Dimension.Time,
        Measurement.Range => Dimension.Angle,
        _ => Dimension.Length,
    };

    /// <summary>Unit that the empty sheet proposes.</summary>
    public string Unit => Dimension switch { Dimension.Force => "N", Dimension.Time => "s", Dimension.Angle => "deg", _ => "mm" };

    /// <summary>Whether a lever belongs to it.</summary>
    public bool NeedsLever => Measurement is Measurement.Flexion or Measurement.Extension or Measurement.Give;

    /// <summary>Whether an angle belongs to it.</summary>
    public bool NeedsAngle => Measurement is Measurement.Flexion or Measurement.Extension or Measurement.TenBends;

    /// <summary>Whether a dial belongs to it.</summary>
    public bool NeedsDial => Measurement == Measurement.Give;
}

/// <summary>What to measure on the wearer of a hand, in which order.</summary>
public static class Protocol
{
    /// <summary>Step between wrist angles [deg].</summary>
    public const double StepDegrees = 10;

    /// <summary>Tries at each angle.</summary>
    public const int Tries = 3;

    /// <summary>Shares of the greatest pull that are held.</summary>
    public static IReadOnlyList<int> HoldPercent { get; } = [25, 50];

    /// <summary>Postures in which the thumb's pad is placed: those of the hand file, or three to begin with.</summary>
    /// <param name="hand">The hand.</param>
    public static IReadOnlyList<string> ThumbPostures(HandModel hand)
    {
        ArgumentNullException.ThrowIfNull(hand);
        return hand.Thumb is { Postures.Count: > 0 } thumb ? [.. thumb.Postures.Select(p => p.Name)] : ["opposed", "side", "wrapped"];
    }

    /// <summary>Readings of a thumb posture: the pad's middle, then a place straight off it; distal, dorsal, toward the thumb.</summary>
    public static IReadOnlyList<Measurement> ThumbReadings { get; } =
        [Measurement.ThumbPadX, Measurement.ThumbPadY, Measurement.ThumbPadZ, Measurement.ThumbLooksX, Measurement.ThumbLooksY, Measurement.ThumbLooksZ];

    /// <summary>Places of girths.</summary>
    public static IReadOnlyList<string> Girths { get; } = ["wrist crease", "forearm 60 mm above the crease", "forearm 120 mm above the crease", "palm at the knuckles"];

    /// <summary>Fewest steps of load on the cuff.</summary>
    private const int GiveSteps = 5;

    /// <summary>What belongs to a line about a quantity.</summary>
    /// <param name="quantity">The quantity.</param>
    public static ProtocolLine Kind(Measurement quantity) => new(quantity);

    /// <summary>Wrist angles at which the pull is measured [deg, flexion positive]: every 10° from one step before the start posture to one step past the travel.</summary>
    /// <param name="hand">The hand.</param>
    public static IReadOnlyList<double> Angles(HandModel hand)
    {
        ArgumentNullException.ThrowIfNull(hand);
        double start = double.RadiansToDegrees(hand.Wrist.StartRadians), travel = double.RadiansToDegrees(hand.Wrist.TravelRadians);
        double end = hand.Wrist.Direction == DrivingDirection.Flexion ? start + travel : start - travel;
        double low = StepDegrees * Math.Floor(Math.Min(start, end) / StepDegrees + 1e-9), high = StepDegrees * Math.Ceiling(Math.Max(start, end) / StepDegrees - 1e-9);
        return [.. Enumerable.Range(0, (int)Math.Round((high - low) / StepDegrees) + 1).Select(i => low + StepDegrees * i)];
    }

    /// <summary>Every line of the empty sheet.</summary>
    /// <param name="hand">The hand.</param>
    public static IReadOnlyList<ProtocolLine> Lines(HandModel hand)
    {
        var lines = new List<ProtocolLine>();
        foreach (Measurement direction in (Measurement[])[Measurement.Flexion, Measurement.Extension])
        {
            lines.AddRange(from angle in Angles(hand) from t in Enumerable.Range(1, Tries) select new ProtocolLine(direction, AngleDegrees: angle, Try: t));
        }

        lines.AddRange(from share in HoldPercent from t in Enumerable.Range(1, 2) select new ProtocolLine(Measurement.Hold, $"{share} %", Try: t));
        lines.AddRange(from way in (string[])["flexion", "extension"] from t in Enumerable.Range(1, Tries) select new ProtocolLine(Measurement.Range, way, Try: t));
        lines.AddRange(Enumerable.Range(1, 2).Select(t => new ProtocolLine(Measurement.TenBends, AngleDegrees: Math.Round(double.RadiansToDegrees(hand.Wrist.TravelRadians)), Try: t)));
        lines.AddRange(from place in Girths from when in (string[])["morning", "evening"] select new ProtocolLine(Measurement.Girth, place, when));
        lines.AddRange(from finger in hand.Fingers from axis in (Measurement[])[Measurement.StumpX, Measurement.StumpY] select new ProtocolLine(axis, finger.Name));
        lines.Add(new(Measurement.Length, "wrist crease to the knuckle of the middle finger"));
        lines.AddRange(from posture in ThumbPostures(hand) from axis in ThumbReadings select new ProtocolLine(axis, posture));
        lines.AddRange(Enumerable.Range(1, Tries).Select(t => new ProtocolLine(Measurement.ThumbPinch, ThumbPostures(hand)[0], Try: t)));
        lines.AddRange(from when in (string[])["loading", "unloading"] from step in Enumerable.Range(1, GiveSteps) select new ProtocolLine(Measurement.Give, "fingers blocked", when, Try: step));
        return lines;
    }
}
