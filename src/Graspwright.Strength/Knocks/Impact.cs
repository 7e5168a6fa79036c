namespace Graspwright.Strength.Knocks;

/// <summary>Greatest force of a blow on something that springs, by energy.</summary>
public static class Impact
{
    /// <summary>Greatest force of a sideways knock [N]: all its energy is stored by the give.</summary>
    /// <param name="joules">Energy that bends [J], 0 or more.</param>
    /// <param name="compliance">Give for each newton [m/N], above 0.</param>
    /// <returns>√(2·E/C).</returns>
    public static double SideForce(double joules, double compliance)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(joules);
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(compliance);
        return Math.Sqrt(2 * joules / compliance);
    }

    /// <summary>Energy at which a force is reached [J].</summary>
    /// <param name="newtons">Force [N].</param>
    /// <param name="compliance">Give for each newton [m/N].</param>
    public static double Energy(double newtons, double compliance) => newtons * newtons * compliance / 2;

    /// <summary>How many times its weight a falling thing presses: 1 + √(1 + 2h/δ).</summary>
    /// <param name="height">Height of fall [m], 0 or more.</param>
    /// <param name="static">Give under the weight at rest [m], above 0.</param>
    /// <source key="falling-weight">Gere, Mechanics of Materials, section on impact loading.</source>
    public static double FallingFactor(double height, double @static)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(height);
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(@static);
        return 1 + Math.Sqrt(1 + 2 * height / @static);
    }
}
