namespace Graspwright.Mechanics.Equilibrium;

/// <summary>One place that rubs: its slide γ, the friction M that it carries, and what it carried at the last accepted state.</summary>
/// <remarks>
/// Coulomb friction by return mapping: M = clamp(M₀ + k(γ − γ₀), low, high) with the bounds of the same state. k is so
/// stiff that sticking moves by far less than anything measured; sliding is exact as long as γ goes one way in the step.
/// </remarks>
internal struct RubbingPlace
{
    /// <summary>Whether anything rubs here.</summary>
    public bool Active;

    /// <summary>Sticking stiffness [N·m/rad or N/m].</summary>
    public double Stiffness;

    /// <summary>Slide [rad or m].</summary>
    public double Slide;

    /// <summary>Slide at the last accepted state.</summary>
    public double SlideBefore;

    /// <summary>Friction [N·m or N], resisting a growing slide where positive.</summary>
    public double Friction;

    /// <summary>Friction at the last accepted state.</summary>
    public double FrictionBefore;

    /// <summary>Greatest friction against a growing slide.</summary>
    public double High;

    /// <summary>Greatest friction against a shrinking slide.</summary>
    public double Low;

    /// <summary>+1 slides forward, −1 slides back, 0 sticks.</summary>
    public int Sliding;

    /// <summary>How it slid at the last accepted state.</summary>
    public int SlidingBefore;

    /// <summary>Where not 0, sliding of this sense is taken for granted (for tangents); 2 = sticking is.</summary>
    public int Assumed;

    /// <summary>Finds the friction for a slide and bounds.</summary>
    /// <returns>∂M/∂γ: the stiffness where it sticks, 0 where it slides.</returns>
    public double Map(double slide, double low, double high)
    {
        Slide = slide;
        Low = low;
        High = high;
        if (Assumed is 1 or -1)
        {
            Sliding = Assumed;
            Friction = Assumed > 0 ? high : low;
            return 0;
        }

        double trial = FrictionBefore + Stiffness * (slide - SlideBefore);
        if (Assumed == 2)
        {
            Sliding = 0;
            Friction = trial;
            return Stiffness;
        }

        Sliding = trial > high ? 1 : trial < low ? -1 : 0;
        Friction = Sliding > 0 ? high : Sliding < 0 ? low : trial;
        return Sliding == 0 ? Stiffness : 0;
    }

    /// <summary>Takes the present state as the last accepted one.</summary>
    public void Accept()
    {
        SlideBefore = Slide;
        FrictionBefore = Friction;
        SlidingBefore = Sliding;
    }
}
