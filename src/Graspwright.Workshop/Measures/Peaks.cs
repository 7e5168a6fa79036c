using Graspwright.Mechanics.Run;
using Graspwright.Workshop.Results;

namespace Graspwright.Workshop.Measures;

/// <summary>Greatest forces of links and of pins over a run.</summary>
internal static class Peaks
{
    /// <summary>Greatest force [N].</summary>
    /// <param name="reading">Run.</param>
    /// <param name="links">Links and pulls, or else pins and the rail.</param>
    public static Reading Greatest(RunReading reading, bool links)
    {
        ForcePeak? greatest = Find(reading, links);
        return greatest is null ? Reading.None("the run recorded no such force") : greatest.Newtons;
    }

    /// <summary>The greatest of them, by name.</summary>
    /// <param name="reading">Run.</param>
    /// <param name="links">Links and pulls, or else pins and the rail.</param>
    public static Working Work(RunReading reading, bool links)
    {
        Terms terms = new();
        foreach (ForcePeak peak in reading.Run.Peaks)
        {
            if (IsLink(peak) == links)
            {
                terms.Add(terms.Input(peak.Subject, peak.Newtons, "N"));
            }
        }

        return terms.Working(terms.Greatest, "drive-model");
    }

    /// <summary>The greatest peak, or <see langword="null"/>.</summary>
    /// <param name="reading">Run.</param>
    /// <param name="links">Links and pulls, or else pins and the rail.</param>
    public static ForcePeak? Find(RunReading reading, bool links)
    {
        ForcePeak? greatest = null;
        foreach (ForcePeak peak in reading.Run.Peaks)
        {
            if (IsLink(peak) == links && !(peak.Newtons <= greatest?.Newtons))
            {
                greatest = peak;
            }
        }

        return greatest;
    }

    private static bool IsLink(ForcePeak peak) =>
        peak.Subject.EndsWith(" link", StringComparison.Ordinal) || peak.Subject.StartsWith("pull ", StringComparison.Ordinal);
}
