using System.Globalization;
using System.Runtime.InteropServices;

namespace Graspwright.Benchmarks;

/// <summary>What the figures were measured on, as the machine says it.</summary>
internal static class Machine
{
    /// <summary>Processor, cores, runtime and load, as lines of a list.</summary>
    public static IEnumerable<string> Facts()
    {
        yield return $"- Processor: {Processor()}; cores that this program may use: {Environment.ProcessorCount.ToString(CultureInfo.InvariantCulture)}";
        yield return $"- System: {RuntimeInformation.OSDescription}, {RuntimeInformation.OSArchitecture.ToString().ToLowerInvariant()}";
        yield return $"- Runtime: {RuntimeInformation.FrameworkDescription}";
        yield return $"- Processes that wanted a core in the last minute: {Load()}";
    }

    /// <summary>Mean number of processes that run or wait to, over the last minute.</summary>
    public static string Load() =>
        File.Exists("/proc/loadavg") ? File.ReadAllText("/proc/loadavg").Split(' ')[0] : "not told by this system";

    private static string Processor()
    {
        const string Key = "model name";
        string? line = File.Exists("/proc/cpuinfo") ? File.ReadLines("/proc/cpuinfo").FirstOrDefault(l => l.StartsWith(Key, StringComparison.Ordinal)) : null;
        return line is null ? "not told by this system" : line[(line.IndexOf(':', StringComparison.Ordinal) + 1)..].Trim();
    }
}
