namespace Graspwright.Strength.Lives;

/// <summary>Form of a law of life.</summary>
public enum LifeForm
{
    /// <summary>Weibull: hazard rises or falls as a power of age.</summary>
    Weibull,

    /// <summary>Lognormal: the logarithm of life is normal.</summary>
    Lognormal,

    /// <summary>Exponential: hazard the same at every age.</summary>
    Exponential,
}

/// <summary>A law of life: ln(life) = location + spread·w, where w follows the form's standard law.</summary>
/// <param name="Form">Form.</param>
/// <param name="Location">Location of the logarithm: ln of the scale for Weibull, of the median for lognormal.</param>
/// <param name="Spread">Spread of the logarithm, above 0: 1/shape for Weibull; 1 for exponential.</param>
/// <remarks>Meeker and Escobar 1998, chapters 4 and 5, in their log-location-scale terms.</remarks>
public readonly record struct LifeLaw(LifeForm Form, double Location, double Spread)
{
    /// <summary>A Weibull law.</summary>
    /// <param name="scale">Scale, in the unit of time: 63.2 % have broken by then.</param>
    /// <param name="shape">Shape.</param>
    public static LifeLaw Weibull(double scale, double shape) => new(LifeForm.Weibull, Math.Log(scale), 1 / shape);

    /// <summary>Scale: exp(location).</summary>
    public double Scale => Math.Exp(Location);

    /// <summary>Shape: 1/spread.</summary>
    public double Shape => 1 / Spread;

    /// <summary>Standard value below which a share lies.</summary>
    /// <param name="form">Form.</param>
    /// <param name="share">Share, above 0 and below 1.</param>
    public static double Standard(LifeForm form, double share) =>
        form == LifeForm.Lognormal ? NormalLaw.Quantile(share) : Math.Log(-NormalLaw.LogOnePlus(-share));

    /// <summary>Logarithm of the share that is whole at a standard value.</summary>
    /// <param name="form">Form.</param>
    /// <param name="z">Standard value.</param>
    public static double LogWhole(LifeForm form, double z) => form == LifeForm.Lognormal ? NormalLaw.LogAbove(z) : -Math.Exp(z);

    /// <summary>Time by which a share has broken.</summary>
    /// <param name="share">Share, above 0 and below 1.</param>
    public double Quantile(double share) => Math.Exp(Location + Spread * Standard(Form, share));

    /// <summary>Logarithm of the share still whole at a time.</summary>
    /// <param name="time">Time, 0 or more.</param>
    public double LogWhole(double time) => time > 0 ? LogWhole(Form, (Math.Log(time) - Location) / Spread) : 0;

    /// <summary>Share still whole at a time.</summary>
    /// <param name="time">Time, 0 or more.</param>
    public double Whole(double time) => Math.Exp(LogWhole(time));

    /// <summary>Share broken by a time.</summary>
    /// <param name="time">Time, 0 or more.</param>
    public double Broken(double time) => -NormalLaw.ExpLessOne(LogWhole(time));

    /// <summary>Time at which a share of those that are whole now has broken.</summary>
    /// <param name="age">Age now.</param>
    /// <param name="share">Share, above 0 and below 1.</param>
    public double BrokenAfter(double age, double share)
    {
        double log = LogWhole(age) + NormalLaw.LogOnePlus(-share);
        double z = Form == LifeForm.Lognormal ? -NormalLaw.Quantile(Math.Exp(log)) : Math.Log(-log);
        return Math.Exp(Location + Spread * z) - age;
    }

    /// <summary>Logarithm of the mean less the location, at a spread.</summary>
    /// <param name="form">Form.</param>
    /// <param name="spread">Spread.</param>
    public static double LogMeanOver(LifeForm form, double spread) =>
        form == LifeForm.Lognormal ? 0.5 * spread * spread : GammaLaw.LogGamma(1 + spread);

    /// <summary>Mean life.</summary>
    public double Mean => Math.Exp(Location + LogMeanOver(Form, Spread));

    /// <summary>Standard deviation of life.</summary>
    public double Deviation => Mean * Math.Sqrt(NormalLaw.ExpLessOne(LogMeanOver(Form, 2 * Spread) - 2 * LogMeanOver(Form, Spread)));
}
