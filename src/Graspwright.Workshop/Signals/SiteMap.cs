using System.Globalization;
using System.Text;
using Graspwright.Drawing.Display;
using Graspwright.Drawing.Dxf;
using Graspwright.Hand;
using Graspwright.Signals.Filters;
using Graspwright.Signals.Quality;
using Graspwright.Signals.Recordings;
using Graspwright.Signals.Separation;
using Graspwright.Signals.Sites;
using Graspwright.Workshop.Results;

namespace Graspwright.Workshop.Signals;

/// <summary>A map of candidate places with what each gives.</summary>
/// <param name="Sites">The places.</param>
/// <param name="Readings">What each gives at each gesture.</param>
/// <param name="Gestures">Gestures, rest first.</param>
/// <param name="Pattern">Outline of the paper pattern as lines [mm].</param>
public sealed record SiteMap(IReadOnlyList<Site> Sites, IReadOnlyList<SiteReading> Readings, IReadOnlyList<string> Gestures, IReadOnlyList<(Place From, Place To)> Pattern)
{
    private const string Header = "site,x_mm,y_mm,direction_deg,spacing_mm,recording";

    /// <summary>Reads map, recordings and pattern.</summary>
    /// <param name="hand">The hand, with signals.</param>
    /// <param name="handFile">Path of its file.</param>
    /// <param name="errors">Takes what is wrong.</param>
    public static SiteMap? Read(HandModel hand, string handFile, ICollection<InputError> errors)
    {
        ArgumentNullException.ThrowIfNull(hand);
        ArgumentNullException.ThrowIfNull(errors);
        if (hand.Signals is not { Map.Length: > 0 } plan)
        {
            errors.Add(new(handFile, 0, 0, "signals.map", "no site map", Header, "Record each candidate place for every gesture, list them, and name the list as signals.map."));
            return null;
        }

        string path = SignalFiles.Beside(handFile, plan.Map);
        if (SignalFiles.Trying(path, "signals.map", errors, () => File.ReadAllText(path, Encoding.UTF8), handFile) is not { } text)
        {
            return null;
        }

        string[] gestures = [LabelledWindows.Rest, .. plan.Channels.Select(c => c.Gesture).Distinct(StringComparer.OrdinalIgnoreCase)];
        List<(Site Site, string Recording, int Line)> rows = Rows(text, path, errors);
        Dictionary<string, Recording?> files = [];
        List<Site> sites = [];
        List<SiteReading> readings = [];
        foreach ((Site site, string recording, int line) in rows)
        {
            string[] parts = recording.Split(':', 2);
            if (NamedFiles.Fault(parts[0], Path.GetDirectoryName(path)) is { } fault)
            {
                errors.Add(new(path, line, 0, "recording", $"'{recording}'", "a file inside the folder of the map", fault));
                continue;
            }

            if (!files.TryGetValue(parts[0], out Recording? file))
            {
                string beside = Path.Combine(Path.GetDirectoryName(path)!, parts[0]);
                files[parts[0]] = file = SignalFiles.Trying(beside, "recording", errors, () => SignalFiles.Read(beside, new()), path, line);
            }

            if (file is not null && ReadingOf(file, parts.Length > 1 ? parts[1].Trim() : site.Name, plan, gestures, path, line, errors) is { } reading)
            {
                sites.Add(site);
                readings.Add(reading);
            }
        }

        return errors.Count > 0 || sites.Count == 0 ? null : new(sites, readings, gestures, Outline(plan, handFile, errors));
    }

    private static List<(Site Site, string Recording, int Line)> Rows(string text, string path, ICollection<InputError> errors)
    {
        List<(Site Site, string Recording, int Line)> rows = [];
        string[] lines = text.TrimStart('\uFEFF').ReplaceLineEndings("\n").Split('\n');
        if (lines[0].Replace(" ", "", StringComparison.Ordinal) != Header)
        {
            errors.Add(new(path, 1, 1, "header", $"'{lines[0]}'", Header, "Write these columns."));
            return rows;
        }

        for (int i = 1; i < lines.Length; i++)
        {
            string[] f = [.. lines[i].Split(',').Select(p => p.Trim())];
            if (lines[i].Trim().Length == 0)
            {
                continue;
            }

            double[] numbers = [.. f.Skip(1).Take(4).Select(n => double.TryParse(n, NumberStyles.Float, CultureInfo.InvariantCulture, out double v) && double.IsFinite(v) ? v : double.NaN)];
            if (f.Length != 6 || numbers.Any(double.IsNaN) || numbers[3] <= 0 || f[0].Length == 0)
            {
                errors.Add(new(path, i + 1, 1, "site", $"'{lines[i]}'", "a name, four numbers (the spacing above 0) and a recording", "Write such as A1,12,40,90,20,map.edf:A1."));
            }
            else if (rows.Exists(r => r.Site.Name == f[0] || r.Site.XMm == numbers[0] && r.Site.YMm == numbers[1]))
            {
                errors.Add(new(path, i + 1, 1, "site", $"{f[0]} at a name or place that is there already", "each site once", "Remove one of the two."));
            }
            else
            {
                rows.Add((new(f[0], numbers[0], numbers[1], numbers[2], numbers[3]), f[5], i + 1));
            }
        }

        return rows;
    }

    private static SiteReading? ReadingOf(Recording file, string channel, MuscleSignals plan, string[] gestures, string path, int line, ICollection<InputError> errors)
    {
        Channel? found = file.Find(channel) ?? (file.Channels.Count == 1 ? file.Channels[0] : null);
        if (found is null)
        {
            errors.Add(new(path, line, 0, "recording", $"no channel {channel}", string.Join(", ", file.Channels.Select(c => c.Name)), "Write the channel behind the file: map.edf:A1."));
            return null;
        }

        // A map may be taken through another amplifier than the day's signals: what looks like an envelope is one.
        bool raw = plan.Kind != "envelope" && KindOfSignal.Of(found, file.RateHertz, plan.MainsHertz).Kind != SignalKind.Envelope;
        float[][] values = FrontEnd.Usual(file.RateHertz, raw, plan.MainsHertz).Envelopes([found]);
        Take take = new(file.RateHertz, values, CueList.Ended(file.Marks, file.Seconds), 1);
        LabelledWindows windows = LabelledWindows.Cut([channel], gestures, [take], ContactsAnswer.WindowSeconds, ContactsAnswer.HopSeconds);
        double[] mean = new double[gestures.Length];
        double square = 0;
        for (int g = 0; g < gestures.Length; g++)
        {
            double[] rows = [.. windows.Windows.Where(w => w.Gesture == g).Select(w => w.Row[0])];
            if (rows.Length < 2)
            {
                errors.Add(new(path, line, 0, "recording", $"no {gestures[g]} in it", string.Join(", ", gestures), "Record every gesture and rest at every place."));
                return null;
            }

            mean[g] = rows.Average();
            square += rows.Sum(r => (r - mean[g]) * (r - mean[g]));
        }

        return new(mean, Math.Max(1e-3, Math.Sqrt(square / Math.Max(1, windows.Windows.Count - gestures.Length))));
    }

    private static (Place From, Place To)[] Outline(MuscleSignals plan, string handFile, ICollection<InputError> errors)
    {
        if (plan.Pattern.Length == 0)
        {
            return [];
        }

        string path = SignalFiles.Beside(handFile, plan.Pattern);
        if (SignalFiles.Trying(path, "signals.pattern", errors, () => File.ReadAllText(path, Encoding.UTF8), handFile) is not { } text)
        {
            return [];
        }

        if (Path.GetExtension(path).Equals(".dxf", StringComparison.OrdinalIgnoreCase))
        {
            if (SignalFiles.Trying(path, "signals.pattern", errors, () => DxfReader.Read(text, path)) is not { } drawing)
            {
                return [];
            }

            (Place From, Place To)[] drawn = [.. drawing.Entities.OfType<DxfLine>().Select(l => (l.From, l.To))];
            if (drawn.Length == 0)
            {
                errors.Add(new(path, 0, 0, "signals.pattern", $"no line in it, and {drawing.Skipped} other things", "an outline of lines", "Write it again with curves and polylines taken apart into lines."));
            }

            return drawn;
        }

        List<Place> places = [];
        string[] lines = text.ReplaceLineEndings("\n").Split('\n');
        for (int i = 1; i < lines.Length; i++)
        {
            string[] f = lines[i].Split(',');
            if (lines[i].Trim().Length == 0)
            {
                continue;
            }

            if (f.Length == 2 && double.TryParse(f[0], NumberStyles.Float, CultureInfo.InvariantCulture, out double x) && double.TryParse(f[1], NumberStyles.Float, CultureInfo.InvariantCulture, out double y))
            {
                places.Add(new(x, y));
                continue;
            }

            errors.Add(new(path, i + 1, 1, "pattern", $"'{lines[i]}'", "x_mm,y_mm", "Write two numbers on each line below the header x_mm,y_mm."));
            return [];
        }

        return [.. places.Select((p, i) => (p, places[(i + 1) % places.Count]))];
    }
}
