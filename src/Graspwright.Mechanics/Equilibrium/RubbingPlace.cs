namespace Graspwright.Mechanics.Equilibrium;

/// <summary>One place that rubs: its slide γ, the friction M that it carries, and what it carried at the last accepted state.</summary>
/// <remarks>
/// Coulomb friction: sliding, M is at its bound, which grows with the load of the same state; sticking, M follows a spring
/// k so stiff that it moves by far less than anything measured. The path keeps the mode of each place within a step and
/// locates where it changes; a descent lets the mode follow by value, M = clamp(M₀ + k(γ − γ₀), low, high).
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
    public int Mode;

    /// <summary>Whether the bounds stay as they are, whatever the load.</summary>
    public bool BoundsHeld;

    /// <summary>Slide of the stiff spring under a bound that counts as none.</summary>
    public const double NoLoad = 1e-13;

    /// <summary>Whether it is pressed at all; one that is not may slide either way, and is told which when its load comes.</summary>
    public readonly bool IsLoaded => High - Low > NoLoad * Stiffness;

    /// <summary>Work against friction since the last accepted state, by the bounds as they are: ∫M dγ.</summary>
    public readonly double Work
    {
        get
        {
            double turned = Slide - SlideBefore, trial = FrictionBefore + Stiffness * turned;
            double edge = Math.Clamp(trial, Low, High), elastic = (edge - FrictionBefore) / Stiffness;
            return 0.5 * (FrictionBefore + edge) * elastic + edge * (turned - elastic);
        }
    }

    /// <summary>Finds the friction for a slide and bounds.</summary>
    /// <param name="slide">Slide γ.</param>
    /// <param name="low">Bound against a shrinking slide, 0 or less.</param>
    /// <param name="high">Bound against a growing slide, 0 or more.</param>
    /// <param name="byValue">Whether the mode follows from the stiff spring; if not, it is the present one.</param>
    /// <returns>∂M/∂γ: the stiffness where it sticks, 0 where it slides.</returns>
    public double Map(double slide, double low, double high, bool byValue)
    {
        Slide = slide;
        if (!BoundsHeld)
        {
            Low = low;
            High = high;
        }

        double trial = FrictionBefore + Stiffness * (slide - SlideBefore);
        if (byValue)
        {
            Mode = trial > High ? 1 : trial < Low ? -1 : 0;
        }

        Friction = Mode > 0 ? High : Mode < 0 ? Low : trial;
        return Mode == 0 ? Stiffness : 0;
    }

    /// <summary>Takes the present state as the last accepted one.</summary>
    public void Accept()
    {
        SlideBefore = Slide;
        FrictionBefore = Friction;
    }
}
