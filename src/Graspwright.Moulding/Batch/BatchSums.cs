namespace Graspwright.Moulding.Batch;

/// <summary>What one piece of sheet and the label of its putty say.</summary>
public sealed record BatchInputs
{
    /// <summary>Area of the sheet [m²].</summary>
    public required double Area { get; init; }

    /// <summary>Thickness [m].</summary>
    public required double Thickness { get; init; }

    /// <summary>Share lost on hands, cups and roller, 0 to below 1.</summary>
    public double Waste { get; init; }

    /// <summary>Share added to be sure, 0 or more.</summary>
    public double Spare { get; init; }

    /// <summary>Parts by weight of A in the ratio, above 0.</summary>
    public double RatioA { get; init; } = 1;

    /// <summary>Parts by weight of B in the ratio, above 0.</summary>
    public double RatioB { get; init; } = 1;

    /// <summary>Density of A [kg/m³].</summary>
    public required double DensityA { get; init; }

    /// <summary>Density of B [kg/m³].</summary>
    public required double DensityB { get; init; }

    /// <summary>Smallest step of the scale [kg].</summary>
    public required double ScaleStep { get; init; }
}

/// <summary>One part of a batch.</summary>
/// <param name="Mass">Mass [kg].</param>
/// <param name="Volume">Volume [m³].</param>
/// <param name="BallDiameter">Diameter of the part rolled to a ball [m].</param>
public readonly record struct PartSum(double Mass, double Volume, double BallDiameter);

/// <summary>How much to weigh out.</summary>
public sealed record BatchSum
{
    /// <summary>Volume of the sheet itself [m³].</summary>
    public required double SheetVolume { get; init; }

    /// <summary>Volume with waste and spare [m³].</summary>
    public required double Volume { get; init; }

    /// <summary>Mass of both parts [kg].</summary>
    public required double Mass { get; init; }

    /// <summary>Density of the mixture [kg/m³].</summary>
    public required double Density { get; init; }

    /// <summary>Part A.</summary>
    public required PartSum A { get; init; }

    /// <summary>Part B.</summary>
    public required PartSum B { get; init; }

    /// <summary>Greatest relative error of the ratio that the scale allows: each weighing off by a whole step, one up, one down.</summary>
    public required double RatioErrorWorst { get; init; }

    /// <summary>Its standard deviation: reading and tare each rounded by up to half a step.</summary>
    public required double RatioErrorDeviation { get; init; }

    /// <summary>Diameter of the whole batch rolled to a ball [m].</summary>
    public required double BallDiameter { get; init; }
}

/// <summary>Weights, volumes and balls of a batch.</summary>
public static class BatchSums
{
    /// <summary>Works out a batch.</summary>
    /// <param name="inputs">Sheet and label.</param>
    /// <exception cref="ArgumentException">A ratio, density or size is not above 0, or the waste is 1 or more.</exception>
    public static BatchSum Of(BatchInputs inputs)
    {
        ArgumentNullException.ThrowIfNull(inputs);
        BatchInputs x = inputs;
        double[] positive = [x.Area, x.Thickness, x.RatioA, x.RatioB, x.DensityA, x.DensityB];
        if (Array.Exists(positive, v => !(v > 0 && double.IsFinite(v))) || x.Waste is < 0 or >= 1 || x.Spare < 0)
        {
            throw new ArgumentException("A batch needs area, thickness, ratio and densities above 0, and waste below 1.", nameof(inputs));
        }

        double sheet = x.Area * x.Thickness, volume = sheet * (1 + x.Spare) / (1 - x.Waste);
        double density = (x.RatioA + x.RatioB) / (x.RatioA / x.DensityA + x.RatioB / x.DensityB), mass = volume * density;
        PartSum a = Part(mass * x.RatioA / (x.RatioA + x.RatioB), x.DensityA), b = Part(mass * x.RatioB / (x.RatioA + x.RatioB), x.DensityB);
        return new()
        {
            SheetVolume = sheet,
            Volume = volume,
            Mass = mass,
            Density = density,
            A = a,
            B = b,
            RatioErrorWorst = x.ScaleStep / a.Mass + x.ScaleStep / b.Mass,
            RatioErrorDeviation = x.ScaleStep / Math.Sqrt(6) * double.Hypot(1 / a.Mass, 1 / b.Mass),
            BallDiameter = Ball(volume),
        };
    }

    /// <summary>Diameter of a ball [m].</summary>
    /// <param name="volume">Its volume [m³].</param>
    public static double Ball(double volume) => Math.Cbrt(6 * volume / Math.PI);

    /// <summary>Relative error of a volume that is read off as the diameter of a ball.</summary>
    /// <param name="diameter">Diameter [m].</param>
    /// <param name="error">Error of the diameter [m].</param>
    public static double BallError(double diameter, double error) => Math.Pow(1 + error / diameter, 3) - 1;

    private static PartSum Part(double mass, double density) => new(mass, mass / density, Ball(mass / density));
}
