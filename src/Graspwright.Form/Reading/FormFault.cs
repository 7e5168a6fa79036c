namespace Graspwright.Form.Reading;

/// <summary>A file that holds no usable surface.</summary>
/// <param name="place">Where: a byte, a line or a triangle, in words.</param>
/// <param name="found">What was found.</param>
/// <param name="allowed">What is allowed.</param>
/// <param name="fix">The likely fix.</param>
public sealed class FormFaultException(string place, string found, string allowed, string fix) : Exception($"{place}: {found}; allowed: {allowed}. {fix}")
{
    /// <summary>Where it is.</summary>
    public string Place { get; } = place;

    /// <summary>What was found.</summary>
    public string Found { get; } = found;

    /// <summary>What is allowed.</summary>
    public string Allowed { get; } = allowed;

    /// <summary>The likely fix.</summary>
    public string Fix { get; } = fix;
}
