using Graspwright.Signals.Recordings;
using Graspwright.Signals.Separation;

namespace Graspwright.Signals.Thresholds;

/// <summary>What a switch did on recordings.</summary>
/// <param name="Missed">Own gestures at which it did not act in time.</param>
/// <param name="Repeated">Times it acted again at one and the same gesture.</param>
internal readonly record struct Rehearsed(int Missed, int Repeated)
{
    public int Errors => Missed + Repeated;
}

/// <summary>A recording parted by what acting there means: wanted, again, or wrong.</summary>
internal sealed class Rehearsal
{
    private readonly List<Zone> _zones = [];
    private readonly List<int> _at = [];

    public Rehearsal(Take take, int channel, string gesture, ThresholdWish wish)
    {
        Take = take;
        Envelope = take.Envelopes[channel];
        Mark[] marks = [.. take.Marks.OrderBy(m => m.StartSeconds)];
        bool ownBefore = false;
        foreach (Mark mark in marks)
        {
            bool own = string.Equals(mark.Gesture, gesture, StringComparison.OrdinalIgnoreCase);
            double slack = own ? wish.CueSlackSeconds + wish.DelayLimitSeconds : Math.Min(wish.CueSlackSeconds, (mark.EndSeconds - mark.StartSeconds) / 2);
            int from = At(mark.StartSeconds), part = At(Math.Min(mark.EndSeconds, mark.StartSeconds + slack)), to = At(mark.EndSeconds);
            // The first part of an own gesture is where it must act; behind another's cue the wearer may still be on the way.
            if (own && take.IsUsable(channel, from / take.RateHertz, part / take.RateHertz))
            {
                _zones.Add(new(from, part, Meaning.Wanted));
                _zones.Add(new(part, to, Meaning.Again));
            }
            else if (!own && take.IsUsable(channel, part / take.RateHertz, to / take.RateHertz))
            {
                _zones.Add(new(from, part, ownBefore ? Meaning.Again : Meaning.Nothing));
                _zones.Add(new(part, to, Meaning.Unwanted));
            }

            ownBefore = own;
        }
    }

    private enum Meaning
    {
        Nothing,
        Wanted,
        Again,
        Unwanted,
    }

    public Take Take { get; }

    public float[] Envelope { get; }

    /// <summary>Stretches in which it must act, or must not.</summary>
    public IEnumerable<(int From, int To, bool Wanted)> Stretches =>
        _zones.Where(z => z.Meaning is Meaning.Wanted or Meaning.Unwanted).Select(z => (z.From, z.To, z.Meaning == Meaning.Wanted));

    public Rehearsed Of(Crossings crossings, SwitchSettings settings)
    {
        crossings.Activations(settings, Take.RateHertz, _at);
        int missed = 0, repeated = 0, next = 0;
        bool acted = false;
        foreach (Zone zone in _zones)
        {
            while (next < _at.Count && _at[next] < zone.From)
            {
                next++;
            }

            int first = next;
            while (next < _at.Count && _at[next] < zone.To)
            {
                next++;
            }

            int count = next - first;
            switch (zone.Meaning)
            {
                case Meaning.Wanted:
                    acted = count > 0;
                    missed += acted ? 0 : 1;
                    repeated += Math.Max(0, count - 1);
                    break;
                case Meaning.Again:
                    // Late is missed already; only what follows an act is one too many.
                    repeated += acted ? count : Math.Max(0, count - 1);
                    acted |= count > 0;
                    break;
            }
        }

        return new(missed, repeated);
    }

    private int At(double seconds) => Math.Clamp((int)(seconds * Take.RateHertz), 0, Envelope.Length);

    private readonly record struct Zone(int From, int To, Meaning Meaning);
}
