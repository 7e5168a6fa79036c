namespace Graspwright.Mechanics.Equilibrium;

/// <summary>How everything that rubs changes along the path, per rad of wrist; places that do not rub stay 0.</summary>
/// <param name="places">Number of places.</param>
internal sealed class RubRates(int places)
{
    /// <summary>Of the slides [rad or m].</summary>
    public readonly double[] Slide = new double[places];

    /// <summary>Of the frictions in their present modes [N·m or N].</summary>
    public readonly double[] Friction = new double[places];

    /// <summary>Of the bounds against a growing slide.</summary>
    public readonly double[] High = new double[places];

    /// <summary>Of the bounds against a shrinking slide.</summary>
    public readonly double[] Low = new double[places];

    /// <summary>Sets the rates of one place.</summary>
    public void Set(int place, int mode, double stiffness, double slide, double high, double low)
    {
        Slide[place] = slide;
        High[place] = high;
        Low[place] = low;
        Friction[place] = mode == 0 ? stiffness * slide : mode > 0 ? high : low;
    }
}
