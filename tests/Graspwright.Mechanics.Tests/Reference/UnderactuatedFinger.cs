namespace Graspwright.Mechanics.Tests.Reference;

/// <summary>Contact forces of an underactuated finger in closed form, frictionless contacts square to the segments.</summary>
/// <remarks>
/// Virtual work: Jᵀf = τ with J_ij = k_i + Σ_{m=j}^{i−1} l_m cos(θ_{m+1} + … + θ_i), the lever of contact i about joint j.
/// J is lower triangular, so f follows from the last segment back. With joint rates q̇ = T ω of the transmission, τ = T⁻ᵀ t and
/// f = J⁻ᵀ T⁻ᵀ t. L. Birglen and C. Gosselin, Kinetostatic Analysis of Underactuated Fingers, IEEE Transactions on
/// Robotics and Automation 20(2), 2004 (formula from memory, derived again here by virtual work).
/// </remarks>
internal static class UnderactuatedFinger
{
    /// <summary>Levers J of the contacts about the joints.</summary>
    /// <param name="stations">Distance of each contact from its segment's own joint.</param>
    /// <param name="lengths">Length of each segment but the last; a last entry is ignored.</param>
    /// <param name="flexions">Relative angle at each joint [rad]; the first does not matter.</param>
    public static double[,] Levers(double[] stations, double[] lengths, double[] flexions)
    {
        int n = stations.Length;
        double[,] j = new double[n, n];
        for (int i = 0; i < n; i++)
        {
            double lever = stations[i], turned = 0;
            j[i, i] = lever;
            for (int m = i - 1; m >= 0; m--)
            {
                turned += flexions[m + 1];
                lever += lengths[m] * Math.Cos(turned);
                j[i, m] = lever;
            }
        }

        return j;
    }

    /// <summary>Contact forces f = J⁻ᵀ τ.</summary>
    public static double[] Forces(double[,] levers, double[] moments)
    {
        int n = moments.Length;
        double[] f = new double[n];
        for (int j = n - 1; j >= 0; j--)
        {
            double left = moments[j];
            for (int i = j + 1; i < n; i++)
            {
                left -= levers[i, j] * f[i];
            }

            f[j] = left / levers[j, j];
        }

        return f;
    }

    /// <summary>Joint moments τ = T⁻ᵀ t of an upper-triangular transmission T.</summary>
    public static double[] JointMoments(double[,] transmission, double[] inputs)
    {
        int n = inputs.Length;
        double[] moments = new double[n];
        for (int i = 0; i < n; i++)
        {
            double left = inputs[i];
            for (int k = 0; k < i; k++)
            {
                left -= transmission[k, i] * moments[k];
            }

            moments[i] = left / transmission[i, i];
        }

        return moments;
    }
}
