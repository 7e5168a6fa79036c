using Graspwright.Signals.Quality;
using Graspwright.Signals.Recordings;

namespace Graspwright.Signals.Separation;

/// <summary>A window with what was going on.</summary>
/// <param name="Level">Level of each channel: mean of the envelope [unit].</param>
/// <param name="Row">Features for the discriminant.</param>
/// <param name="Gesture">Gesture, by its place in <see cref="LabelledWindows.Gestures"/>.</param>
/// <param name="Repetition">Which time the gesture was made, over all recordings; windows of one repetition are not independent.</param>
/// <param name="Donning">Which time the contacts were put on.</param>
public sealed record LabelledWindow(double[] Level, double[] Row, int Gesture, int Repetition, int Donning);

/// <summary>Windows of one or more recordings, labelled.</summary>
/// <param name="Channels">Names of the channels.</param>
/// <param name="Gestures">Gestures; the first is rest.</param>
/// <param name="Windows">The windows.</param>
public sealed record LabelledWindows(IReadOnlyList<string> Channels, IReadOnlyList<string> Gestures, IReadOnlyList<LabelledWindow> Windows)
{
    /// <summary>The word for doing nothing.</summary>
    public const string Rest = "rest";

    /// <summary>Share of each mark's start left out, while the wearer is still on the way.</summary>
    public const double OnTheWay = 0.2;

    /// <summary>Cuts windows out of marked stretches.</summary>
    /// <param name="channels">Names of the channels, in the order of the signals.</param>
    /// <param name="gestures">Gestures that count, rest first; marks of others are left out.</param>
    /// <param name="takes">Recordings with their envelopes.</param>
    /// <param name="lengthSeconds">Length of a window [s].</param>
    /// <param name="hopSeconds">From window to window [s].</param>
    public static LabelledWindows Cut(IReadOnlyList<string> channels, IReadOnlyList<string> gestures, IReadOnlyList<Take> takes, double lengthSeconds, double hopSeconds)
    {
        ArgumentNullException.ThrowIfNull(channels);
        ArgumentNullException.ThrowIfNull(gestures);
        ArgumentNullException.ThrowIfNull(takes);
        List<LabelledWindow> windows = [];
        int repetition = 0;
        foreach (Take take in takes)
        {
            int length = Math.Max(1, (int)Math.Round(lengthSeconds * take.RateHertz)), hop = Math.Max(1, (int)Math.Round(hopSeconds * take.RateHertz));
            foreach (Mark mark in take.Marks)
            {
                int gesture = IndexOf(gestures, mark.Gesture);
                if (gesture < 0)
                {
                    continue;
                }

                double start = mark.StartSeconds + OnTheWay * (mark.EndSeconds - mark.StartSeconds);
                int end = (int)Math.Min(take.Envelopes[0].Length, mark.EndSeconds * take.RateHertz), before = windows.Count;
                for (int at = (int)(start * take.RateHertz); at >= 0 && at + length <= end; at += hop)
                {
                    if (!Enumerable.Range(0, channels.Count).All(c => take.IsUsable(c, at / take.RateHertz, (at + length) / take.RateHertz)))
                    {
                        continue;
                    }

                    double[] level = [.. take.Envelopes.Select(e => Features.MeanAbsolute(e.AsSpan(at, length)))];
                    double[] row = [.. level.Select(Logarithm)];
                    windows.Add(new(level, row, gesture, repetition, take.Donning));
                }

                repetition += windows.Count > before ? 1 : 0;
            }
        }

        return new(channels, gestures, windows);
    }

    /// <summary>Levels scatter by factors, so that their logarithms scatter alike.</summary>
    internal static double Logarithm(double level) => Math.Log(Math.Max(level, 1e-12));

    private static int IndexOf(IReadOnlyList<string> words, string word)
    {
        for (int i = 0; i < words.Count; i++)
        {
            if (string.Equals(words[i], word, StringComparison.OrdinalIgnoreCase))
            {
                return i;
            }
        }

        return -1;
    }
}

/// <summary>A recording made ready: envelopes of its channels.</summary>
/// <param name="RateHertz">Samples a second of the envelopes [1/s].</param>
/// <param name="Envelopes">Envelope of each channel, to 24 bits [unit].</param>
/// <param name="Marks">What was going on.</param>
/// <param name="Donning">Which time the contacts were put on.</param>
public sealed record Take(double RateHertz, IReadOnlyList<float[]> Envelopes, IReadOnlyList<Mark> Marks, int Donning)
{
    /// <summary>Time after a lift-off in which the filters still carry it [s].</summary>
    private const double SettlingSeconds = 0.3;

    /// <summary>Stretches of each channel that are not usable; empty = all is.</summary>
    public IReadOnlyList<IReadOnlyList<Stretch>> Unusable { get; init; } = [];

    /// <summary>Whether a channel is usable all through a stretch of time.</summary>
    /// <param name="channel">Channel.</param>
    /// <param name="startSeconds">From [s].</param>
    /// <param name="endSeconds">To [s].</param>
    public bool IsUsable(int channel, double startSeconds, double endSeconds)
    {
        if (channel >= Unusable.Count)
        {
            return true;
        }

        foreach (Stretch bad in Unusable[channel])
        {
            if (bad.StartSeconds < endSeconds && startSeconds < bad.EndSeconds + SettlingSeconds)
            {
                return false;
            }
        }

        return true;
    }
}
