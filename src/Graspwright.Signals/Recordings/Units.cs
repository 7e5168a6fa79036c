namespace Graspwright.Signals.Recordings;

/// <summary>Units of voltage as files write them.</summary>
internal static class Units
{
    /// <summary>Unit in the model and the factor to it.</summary>
    public static (string Unit, double Factor) Of(string written) => written.Trim().Replace('\u00B5', 'u').Replace('\u03BC', 'u') switch
    {
        "V" or "v" or "volt" or "volts" => ("V", 1),
        "mV" or "mv" => ("V", 1e-3),
        "uV" or "uv" => ("V", 1e-6),
        "nV" => ("V", 1e-9),
        "counts" or "count" or "1" or "" => ("", 1),
        var other => (other, 1),
    };

    /// <summary>Factor of a unit of time to seconds; <see langword="null"/> = not one.</summary>
    public static double? Time(string written) => written.Trim().Replace('\u00B5', 'u').Replace('\u03BC', 'u') switch
    {
        "" or "s" or "sec" or "seconds" => 1,
        "ms" or "millis" => 1e-3,
        "us" or "micros" => 1e-6,
        _ => null,
    };
}
