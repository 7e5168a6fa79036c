namespace Graspwright.Strength.Wear;

/// <summary>How a turning pin wears its bore, by Archard's law.</summary>
/// <source key="archard-1953">Volume worn = k·force·distance rubbed.</source>
public static class BoreWear
{
    /// <summary>Growth of the play for each grip [m]: depth = k·(d/2)·∫F|dq| ÷ (d·width).</summary>
    /// <remarks>The bore is worn on the side that is loaded, over the pin's whole width; the harder pin is taken as not worn.</remarks>
    /// <param name="wear">Wear factor k [m²/N].</param>
    /// <param name="forceTimesAngle">∫F|dq| over closing and opening [N·rad].</param>
    /// <param name="width">Length of bore that bears [m], above 0.</param>
    public static double PlayPerGrip(double wear, double forceTimesAngle, double width)
    {
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(width);
        return wear * forceTimesAngle / (2 * width);
    }

    /// <summary>Sideways play at the fingertip, from one side to the other [m]: each pin tilts in the bores of its ears.</summary>
    /// <param name="play">Diametral play of each hinge [m].</param>
    /// <param name="along">From each hinge to the tip [m].</param>
    /// <param name="spacing">Distance of the outer faces of the bores of each hinge [m], above 0.</param>
    public static double TipPlay(ReadOnlySpan<double> play, ReadOnlySpan<double> along, ReadOnlySpan<double> spacing)
    {
        double sum = 0;
        for (int j = 0; j < play.Length; j++)
        {
            sum += 2 * play[j] * along[j] / spacing[j];
        }

        return sum;
    }
}
