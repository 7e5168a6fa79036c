namespace Graspwright.Moulding.Cure;

/// <summary>How the speed of curing follows temperature.</summary>
public enum CureRule
{
    /// <summary>The same factor for every ten degrees.</summary>
    TenDegrees,

    /// <summary>Arrhenius' law, with the activation energy that gives the same factor from the label's temperature to ten degrees above it.</summary>
    Arrhenius,
}

/// <summary>Speed of curing beside the speed at the temperature of the label.</summary>
/// <param name="Rule">The rule.</param>
/// <param name="TenDegreeFactor">Factor for ten degrees, above 1.</param>
/// <param name="LabelTemperature">Temperature for which the label's minutes hold [K].</param>
public readonly record struct CureRate(CureRule Rule, double TenDegreeFactor, double LabelTemperature)
{
    /// <summary>Boltzmann's constant [eV/K], exact by definition of kelvin and electronvolt (8.617333262…e-5).</summary>
    public const double Boltzmann = 8.617333262e-5;

    /// <summary>Minutes of the label that pass in one minute at a temperature.</summary>
    /// <param name="temperature">Temperature [K].</param>
    public double At(double temperature) => Rule == CureRule.TenDegrees
        ? Math.Pow(TenDegreeFactor, (temperature - LabelTemperature) / 10)
        : Acceleration(ActivationEnergy(TenDegreeFactor, LabelTemperature, LabelTemperature + 10), LabelTemperature, temperature);

    /// <summary>The same as a function with its constants worked out once.</summary>
    public Func<double, double> Speed()
    {
        double label = LabelTemperature;
        if (Rule == CureRule.TenDegrees)
        {
            double slope = Math.Log(TenDegreeFactor) / 10;
            return temperature => Math.Exp(slope * (temperature - label));
        }

        double energy = ActivationEnergy(TenDegreeFactor, label, label + 10) / Boltzmann;
        return temperature => Math.Exp(energy * (1 / label - 1 / temperature));
    }

    /// <summary>Arrhenius' factor from one temperature to another.</summary>
    /// <param name="activation">Activation energy [eV].</param>
    /// <param name="from">First temperature [K].</param>
    /// <param name="to">Second temperature [K].</param>
    /// <source key="arrhenius-1889">exp(E÷k·(1÷T₁ − 1÷T₂)).</source>
    public static double Acceleration(double activation, double from, double to) => Math.Exp(activation / Boltzmann * (1 / from - 1 / to));

    /// <summary>Activation energy with which the speed rises by a factor between two temperatures.</summary>
    /// <param name="factor">The factor, above 0.</param>
    /// <param name="from">First temperature [K].</param>
    /// <param name="to">Second temperature [K], another.</param>
    /// <returns>Energy [eV].</returns>
    public static double ActivationEnergy(double factor, double from, double to) => Boltzmann * Math.Log(factor) / (1 / from - 1 / to);
}
