using System.Globalization;
using Graspwright.Hand;

namespace Graspwright.Workshop.Measuring;

/// <summary>Pulls of one direction.</summary>
/// <param name="Direction">Flexion or extension.</param>
/// <param name="Angles">Tries angle by angle, angles rising.</param>
/// <param name="Statistics">How they scatter.</param>
public sealed record DirectionPulls(Measurement Direction, IReadOnlyList<AngleTries> Angles, TryStatistics Statistics)
{
    /// <summary>Angles whose tries agree.</summary>
    public IReadOnlyList<AngleTries> Agreeing => [.. Angles.Where(Statistics.Agree)];

    /// <summary>The angle of the greatest mean among those that agree; <see langword="null"/> where none does.</summary>
    public AngleTries? Peak => Agreeing.MaxBy(a => a.Mean);
}

/// <summary>A value of the hand file that a measurement replaces.</summary>
/// <param name="Path">Path of the value.</param>
/// <param name="Before">What the file says now, or the default.</param>
/// <param name="WasGuess">Whether the file leaves it out.</param>
/// <param name="After">The measured value.</param>
/// <param name="Section">A whole new section, as the file will have it; <see langword="null"/> = a value.</param>
public sealed record Replacement(string Path, string Before, bool WasGuess, string After, string? Section = null);

/// <summary>What a filled measuring sheet says about the wearer.</summary>
public sealed class MeasuredWearer
{
    /// <summary>Works the sheet out.</summary>
    /// <param name="hand">The hand.</param>
    /// <param name="readings">Readings of the sheet.</param>
    public MeasuredWearer(HandModel hand, IReadOnlyList<Reading> readings)
    {
        ArgumentNullException.ThrowIfNull(hand);
        ArgumentNullException.ThrowIfNull(readings);
        Hand = hand;
        Readings = readings;
        Pulls = [.. ((Measurement[])[Measurement.Flexion, Measurement.Extension]).Select(Direction).Where(d => d.Angles.Count > 0)];
        Give = GiveFit.Of(readings, hand.Give);
        Reading[] bends = [.. readings.Where(r => r.Measurement == Measurement.TenBends && r.Value > 0)];
        SpeedDegrees = bends.Length == 0 ? double.NaN : bends.Average(b => 20 * b.AngleDegrees / b.Value);
    }

    /// <summary>The hand.</summary>
    public HandModel Hand { get; }

    /// <summary>The readings.</summary>
    public IReadOnlyList<Reading> Readings { get; }

    /// <summary>Pulls of each direction that was measured.</summary>
    public IReadOnlyList<DirectionPulls> Pulls { get; }

    /// <summary>Give of the cuff; <see langword="null"/> = not measured, or not to be fitted.</summary>
    public GiveFit? Give { get; }

    /// <summary>Speed of bending from ten bends there and back [deg/s]; NaN = not measured.</summary>
    public double SpeedDegrees { get; }

    /// <summary>Readings of a quantity, grouped by where and when, in the order of the sheet.</summary>
    /// <param name="quantity">The quantity.</param>
    public IReadOnlyList<IGrouping<(string Where, string When), Reading>> Groups(Measurement quantity) =>
        [.. Readings.Where(r => r.Measurement == quantity).GroupBy(r => (r.Where, r.When))];

    /// <summary>What the sheet would replace in the hand file.</summary>
    /// <param name="editor">The hand file.</param>
    public IReadOnlyList<Replacement> Replacements(HandEditor editor)
    {
        ArgumentNullException.ThrowIfNull(editor);
        var found = new List<Replacement>();
        foreach (DirectionPulls pulls in Pulls.Where(p => p.Agreeing.Count >= 2))
        {
            string table = string.Join(", ", pulls.Agreeing.Select(a => string.Create(CultureInfo.InvariantCulture, $"[\"{a.AngleDegrees:0.##} deg\", \"{Digits(a.Mean)} N·m\"]")));
            Add($"wrist.capacity.{pulls.Direction.Word()}", $"[{table}]");
        }

        if (Give is { } give && double.IsFinite(give.Cuff))
        {
            Add("give.cuff", $"{Digits(PerDegree(give.Cuff))} N·m/deg");
        }

        if (Give is { } late && double.IsFinite(late.Hysteresis))
        {
            Add("give.hysteresis", string.Create(CultureInfo.InvariantCulture, $"{100 * late.Hysteresis:0} %"));
        }

        if (double.IsFinite(SpeedDegrees))
        {
            Add("wrist.speed", string.Create(CultureInfo.InvariantCulture, $"{SpeedDegrees:0} deg/s"));
        }

        foreach ((string way, string path) in (ReadOnlySpan<(string, string)>)[("flexion", "wrist_range.flexion"), ("extension", "wrist_range.extension")])
        {
            double[] reached = [.. Readings.Where(r => r.Measurement == Measurement.Range && r.Where == way).Select(r => r.Value)];
            if (reached.Length > 0 && reached.Min() > 0)
            {
                Add(path, string.Create(CultureInfo.InvariantCulture, $"{double.RadiansToDegrees(reached.Average()):0} deg"));
            }
        }

        double[] pinch = [.. Readings.Where(r => r.Measurement == Measurement.ThumbPinch).Select(r => r.Value)];
        if (pinch.Length > 0 && pinch.Average() > 0)
        {
            Add("thumb.pinch", $"{Digits(pinch.Average())} N");
        }

        foreach (string posture in Readings.Where(r => Protocol.ThumbReadings.Contains(r.Measurement)).Select(r => r.Where).Distinct(StringComparer.Ordinal))
        {
            string path = HandPath.Join("thumb.postures", posture), known = $"{path}.pad";
            Measurement[] pad = [.. Protocol.ThumbReadings.Take(3)], straw = [.. Protocol.ThumbReadings.Skip(3)];
            if (editor.Find(known) is { InFile: true })
            {
                Place(posture, known, pad);
                Place(posture, $"{path}.looks_at", straw);
            }
            else if (Places(posture, pad) is { } at && Places(posture, straw) is { } looksAt)
            {
                found.Add(new(path, "", true, $"pad = {at}, looks_at = {looksAt}", $"\n[{path}]\npad = {at}\nlooks_at = {looksAt}\n"));
            }
        }

        foreach (Finger finger in Hand.Fingers)
        {
            Place(finger.Name, HandPath.Join("room.stumps", finger.Name), [Measurement.StumpX, Measurement.StumpY]);
        }

        return found;

        void Place(string where, string path, Measurement[] axes)
        {
            if (Places(where, axes) is { } places)
            {
                Add(path, places);
            }
        }

        // A place needs all its numbers.
        string? Places(string where, Measurement[] axes)
        {
            double[] places = [.. axes.Select(a => Readings.Where(r => r.Measurement == a && r.Where == where).Select(r => r.Value).DefaultIfEmpty(double.NaN).Average())];
            return places.All(double.IsFinite) ? $"[{string.Join(", ", places.Select(p => string.Create(CultureInfo.InvariantCulture, $"\"{1000 * p:0.#} mm\"")))}]" : null;
        }

        void Add(string path, string after)
        {
            HandValue? now = editor.Find(path);
            found.Add(new(path, now?.Text ?? "", now?.InFile != true, after));
        }
    }

    /// <summary>The hand file with the measured values in it; comments, order and spacing are kept.</summary>
    /// <param name="editor">The hand file.</param>
    /// <param name="replacements">What to put in.</param>
    /// <returns>The edited file, or why it was refused.</returns>
    public static EditResult Apply(HandEditor editor, IReadOnlyList<Replacement> replacements)
    {
        ArgumentNullException.ThrowIfNull(replacements);
        EditResult result = new(editor, []);
        foreach (Replacement replacement in replacements)
        {
            result = replacement.Section is { } section ? result.Editor!.ReplacePart(replacement.Path, section) : result.Editor!.Set(replacement.Path, replacement.After);
            if (result.Editor is null)
            {
                return result;
            }
        }

        return result;
    }

    /// <summary>Stiffness per degree.</summary>
    /// <param name="perRadian">Stiffness per radian.</param>
    public static double PerDegree(double perRadian) => perRadian * Math.PI / 180;

    /// <summary>Three digits: no pull is known better.</summary>
    private static string Digits(double value) => value.ToString("G3", CultureInfo.InvariantCulture);

    private DirectionPulls Direction(Measurement direction)
    {
        AngleTries[] angles =
        [
            .. Readings.Where(r => r.Measurement == direction).GroupBy(r => r.AngleDegrees).OrderBy(g => g.Key)
                .Select(g => new AngleTries(g.Key, [.. g.Select(r => r.Moment)], [.. g.Select(r => r.Value)], [.. g.Select(r => r.Lever)])),
        ];
        return new(direction, angles, new(angles));
    }
}
