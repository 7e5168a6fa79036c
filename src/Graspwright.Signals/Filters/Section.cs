namespace Graspwright.Signals.Filters;

/// <summary>A second-order section: (b0 + b1·z⁻¹ + b2·z⁻²) ÷ (1 + a1·z⁻¹ + a2·z⁻²).</summary>
/// <param name="B0">b0.</param>
/// <param name="B1">b1.</param>
/// <param name="B2">b2.</param>
/// <param name="A1">a1.</param>
/// <param name="A2">a2.</param>
public readonly record struct Section(double B0, double B1, double B2, double A1, double A2)
{
    /// <summary>Gain at a frequency.</summary>
    /// <param name="hertz">Frequency [1/s].</param>
    /// <param name="rateHertz">Sampling rate [1/s].</param>
    public System.Numerics.Complex Response(double hertz, double rateHertz)
    {
        System.Numerics.Complex z = System.Numerics.Complex.FromPolarCoordinates(1, -2 * Math.PI * hertz / rateHertz);
        return (B0 + z * (B1 + z * B2)) / (1 + z * (A1 + z * A2));
    }
}

/// <summary>A filter as a chain of second-order sections.</summary>
/// <param name="Sections">The sections, first to last.</param>
public sealed record SectionChain(IReadOnlyList<Section> Sections)
{
    /// <summary>Gain at a frequency.</summary>
    /// <param name="hertz">Frequency [1/s].</param>
    /// <param name="rateHertz">Sampling rate [1/s].</param>
    public System.Numerics.Complex Response(double hertz, double rateHertz) =>
        Sections.Aggregate(System.Numerics.Complex.One, (gain, s) => gain * s.Response(hertz, rateHertz));

    /// <summary>This chain, then another.</summary>
    /// <param name="next">The other.</param>
    public SectionChain Then(SectionChain next)
    {
        ArgumentNullException.ThrowIfNull(next);
        return new([.. Sections, .. next.Sections]);
    }

    /// <summary>Delay at a frequency from the slope of the phase [s].</summary>
    /// <param name="hertz">Frequency [1/s].</param>
    /// <param name="rateHertz">Sampling rate [1/s].</param>
    public double DelaySeconds(double hertz, double rateHertz)
    {
        double h = rateHertz * 1e-6;
        System.Numerics.Complex turn = Response(hertz + h, rateHertz) / Response(Math.Max(hertz - h, 0), rateHertz);
        return -turn.Phase / (2 * Math.PI * (hertz - h < 0 ? hertz + h : 2 * h));
    }
}
