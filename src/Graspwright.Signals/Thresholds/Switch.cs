namespace Graspwright.Signals.Thresholds;

/// <summary>Levels and times of a channel, as they are loaded into a controller.</summary>
/// <param name="On">Level from which it counts as tensed [unit].</param>
/// <param name="Off">Level below which it counts as relaxed again [unit], at most <paramref name="On"/>.</param>
/// <param name="HoldSeconds">How long it must stay above <paramref name="On"/> before it acts [s].</param>
/// <param name="RefractorySeconds">How long after acting it does not act again [s].</param>
public sealed record SwitchSettings(double On, double Off, double HoldSeconds, double RefractorySeconds);

/// <summary>Turns an envelope into activations: hold before it acts, hysteresis, a refractory time behind.</summary>
/// <param name="settings">Settings.</param>
/// <param name="rateHertz">Samples a second [1/s].</param>
public sealed class Switch(SwitchSettings settings, double rateHertz)
{
    private readonly int _hold = SamplesOf(settings.HoldSeconds, rateHertz), _refractory = RefractoryOf(settings.RefractorySeconds, rateHertz);
    private int _above, _since = int.MaxValue;
    private bool _armed = true;

    /// <summary>Activations so far.</summary>
    public long Activations { get; private set; }

    /// <summary>Whether it is tensed, from acting until it falls below the lower level.</summary>
    public bool IsOn { get; private set; }

    /// <summary>Samples of a hold: at least one.</summary>
    /// <param name="seconds">Hold [s].</param>
    /// <param name="rateHertz">Samples a second [1/s].</param>
    public static int SamplesOf(double seconds, double rateHertz) => Math.Max(1, (int)Math.Round(seconds * rateHertz));

    /// <summary>Samples of a refractory time.</summary>
    /// <param name="seconds">Refractory time [s].</param>
    /// <param name="rateHertz">Samples a second [1/s].</param>
    public static int RefractoryOf(double seconds, double rateHertz) => (int)Math.Ceiling(seconds * rateHertz);

    /// <summary>Takes a sample of the envelope.</summary>
    /// <param name="value">Envelope [unit].</param>
    /// <returns>Whether it acts at this sample.</returns>
    public bool Step(double value)
    {
        _since = _since == int.MaxValue ? _since : _since + 1;
        if (value < settings.Off)
        {
            _armed = true;
            IsOn = false;
        }

        _above = value >= settings.On ? _above + 1 : 0;
        if (!_armed || _above < _hold || _since < _refractory)
        {
            return false;
        }

        (_armed, IsOn, _since) = (false, true, 0);
        Activations++;
        return true;
    }
}
