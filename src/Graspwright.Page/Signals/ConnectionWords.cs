using System.Globalization;
using Graspwright.Signals.Quality;
using Graspwright.Workshop.Signals;

namespace Graspwright.Page.Signals;

/// <summary>How each channel was connected over a recording, told in words from its beginning to its end.</summary>
public static class ConnectionWords
{
    private const int MostStretches = 6;

    /// <summary>The channels of each recording.</summary>
    /// <param name="result">An answer about contacts.</param>
    public static IEnumerable<(string Recording, IReadOnlyList<ContactReading> Channels)> Of(ContactsResult result)
    {
        ArgumentNullException.ThrowIfNull(result);
        return result.Set is { } set ? set.Recordings.Select((r, i) => (r.Plan.Name, result.Readings[i])) : [];
    }

    /// <summary>The course of one channel.</summary>
    /// <param name="channel">The channel.</param>
    public static string Course(ContactReading channel)
    {
        ArgumentNullException.ThrowIfNull(channel);
        Stretch[] bad = [.. channel.Stretches.Where(s => s.State != ContactState.Usable).OrderBy(s => s.StartSeconds)];
        if (bad.Length == 0)
        {
            return "connected from beginning to end.";
        }

        if (bad.Length > MostStretches)
        {
            IEnumerable<string> sums = bad.GroupBy(s => s.State).OrderByDescending(g => g.Sum(Length)).Select(g => string.Create(CultureInfo.InvariantCulture, $"{Word(g.Key)} {Times(g.Count())}, {g.Sum(Length):0.#} s together"));
            return $"{string.Join("; ", sums)}; first at {Clock(bad[0].StartSeconds)}, last at {Clock(bad[^1].StartSeconds)}; else connected.";
        }

        return $"{string.Join("; ", bad.Select(s => string.Create(CultureInfo.InvariantCulture, $"{Word(s.State)} from {Clock(s.StartSeconds)} for {Length(s):0.#} s")))}; else connected.";
    }

    private static double Length(Stretch stretch) => stretch.EndSeconds - stretch.StartSeconds;

    private static string Times(int count) => count switch { 1 => "once", 2 => "twice", _ => $"{count.ToString(CultureInfo.InvariantCulture)} times" };

    private static string Clock(double seconds) => string.Create(CultureInfo.InvariantCulture, $"{(int)seconds / 60}:{seconds % 60:00.#}");

    private static string Word(ContactState state) => state switch { ContactState.Lifted => "lifted off", ContactState.Saturated => "at its end", ContactState.Flat => "flat", ContactState.Moving => "shaken", ContactState.Missing => "samples missing", _ => "connected" };
}
