using Graspwright.Signals.Recordings;

namespace Graspwright.Signals.Quality;

/// <summary>What an amplifier gives.</summary>
public enum SignalKind
{
    /// <summary>Cannot be told from this recording: ask.</summary>
    Unclear,

    /// <summary>The raw signal: swings both ways, 20 Hz and up.</summary>
    Raw,

    /// <summary>The smoothed envelope: slow, one-sided.</summary>
    Envelope,
}

/// <summary>What the kind was told by.</summary>
/// <param name="Kind">The kind.</param>
/// <param name="FastShare">Share of the power above 20 Hz in the windows that are strongest there.</param>
/// <param name="FastSwing">How many times stronger the power above 20 Hz is in strong windows than in weak ones.</param>
/// <param name="SlowShare">Share of the power below 20 Hz in the windows that are strongest altogether.</param>
/// <param name="Why">In words.</param>
public readonly record struct KindReading(SignalKind Kind, double FastShare, double FastSwing, double SlowShare, string Why);

/// <summary>Tells raw signals from envelopes by where their power is when they are active.</summary>
/// <remarks>Chosen by us: power above 20 Hz that comes and goes with activity is raw; power below 20 Hz that comes and goes is an envelope.</remarks>
public static class KindOfSignal
{
    private const double Active = 4, Most = 0.5, LeastRate = 60;

    /// <summary>Tells the kind of a channel.</summary>
    /// <param name="channel">The channel.</param>
    /// <param name="rateHertz">Sampling rate [1/s].</param>
    /// <param name="mainsHertz">Mains frequency, whose lines do not count [1/s].</param>
    public static KindReading Of(Channel channel, double rateHertz, double mainsHertz) => Of(WindowPowers.Of(channel, rateHertz, mainsHertz), rateHertz);

    /// <summary>Tells the kind of a channel whose powers are known.</summary>
    /// <param name="powers">Its powers.</param>
    /// <param name="rateHertz">Sampling rate [1/s].</param>
    public static KindReading Of(WindowPowers powers, double rateHertz)
    {
        ArgumentNullException.ThrowIfNull(powers);
        if (rateHertz < LeastRate)
        {
            return new(SignalKind.Envelope, 0, 1, 1, FormattableString.Invariant($"{rateHertz:0.#} samples a second are too few for a raw signal, so this is taken as an envelope"));
        }

        if (powers.Count < 8)
        {
            return new(SignalKind.Unclear, double.NaN, double.NaN, double.NaN, "the recording is too short to tell");
        }

        (double fast, double swing) = Strongest(powers.Band, powers.Slow);
        (double slow, double slowSwing) = Strongest(powers.Slow, powers.Band);
        if (swing > Active && fast > Most)
        {
            return new(SignalKind.Raw, fast, swing, slow, "its power above 20 Hz comes and goes with activity");
        }

        return slowSwing > Active && slow > 1 - Most && swing < slowSwing
            ? new(SignalKind.Envelope, fast, swing, slow, "it comes and goes slowly, and what is above 20 Hz does not follow")
            : new(SignalKind.Unclear, fast, swing, slow, "neither above nor below 20 Hz does its power come and go clearly: nothing was tensed, or the contacts do not touch");
    }

    /// <summary>Share of one power in the tenth of windows where it is greatest, and how far above the weakest tenth it rises there.</summary>
    private static (double Share, double Swing) Strongest(double[] of, double[] beside)
    {
        int[] order = [.. Enumerable.Range(0, of.Length).OrderByDescending(i => of[i])];
        int tenth = Math.Max(1, of.Length / 10);
        double own = order.Take(tenth).Sum(i => of[i]), other = order.Take(tenth).Sum(i => beside[i]);
        double weak = order.TakeLast(tenth).Sum(i => of[i]);
        return (own / (own + other), weak > 0 ? own / weak : double.PositiveInfinity);
    }
}
