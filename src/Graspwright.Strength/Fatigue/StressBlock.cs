namespace Graspwright.Strength.Fatigue;

/// <summary>Cycles of one size on a day of wear.</summary>
/// <param name="Highest">Highest stress of the cycle at its notch [Pa].</param>
/// <param name="Lowest">Lowest stress [Pa].</param>
/// <param name="PerDay">Cycles on a day, 0 or more.</param>
public readonly record struct StressBlock(double Highest, double Lowest, double PerDay)
{
    /// <summary>Amplitude [Pa].</summary>
    public double Amplitude => (Highest - Lowest) / 2;

    /// <summary>Mean [Pa].</summary>
    public double Mean => (Highest + Lowest) / 2;
}

/// <summary>Adds up damage by Palmgren and Miner.</summary>
public static class DamageSum
{
    /// <summary>Damage of a day, where all stresses are some times as great in proportion to the strength; 1 breaks.</summary>
    /// <remarks>Blocks whose highest stress reaches the strength are left out: they break at once and are counted apart.</remarks>
    /// <param name="blocks">Blocks of a day.</param>
    /// <param name="line">Fatigue line.</param>
    /// <param name="strength">Tensile strength [Pa].</param>
    /// <param name="times">Factor on all stresses, 0 or more.</param>
    public static double OfDay(ReadOnlySpan<StressBlock> blocks, FatigueLine line, double strength, double times)
    {
        double sum = 0;
        foreach (StressBlock block in blocks)
        {
            if (block.PerDay > 0 && block.Amplitude > 0 && block.Highest * times < strength)
            {
                sum += block.PerDay / line.Cycles(MeanStress.Goodman(block.Amplitude * times, block.Mean * times, strength));
            }
        }

        return sum;
    }
}
