using System.Globalization;
using Graspwright.Hand;
using Graspwright.Signals.Filters;
using Graspwright.Signals.Quality;
using Graspwright.Signals.Recordings;
using Graspwright.Signals.Separation;
using Graspwright.Workshop.Results;

namespace Graspwright.Workshop.Signals;

/// <summary>Recordings of a hand made ready: channels of the hand file in its order, one kind, envelopes.</summary>
/// <param name="Plan">What the hand file says.</param>
/// <param name="Kind">Raw or envelope; unclear where neither the file nor the recordings tell.</param>
/// <param name="KindWhy">What the kind rests on.</param>
/// <param name="Recordings">The recordings, their channels as in the hand file.</param>
public sealed record SignalSet(MuscleSignals Plan, SignalKind Kind, string KindWhy, IReadOnlyList<LoadedRecording> Recordings)
{
    /// <summary>Names of the channels.</summary>
    public IReadOnlyList<string> Channels => [.. Plan.Channels.Select(c => c.Name)];

    /// <summary>Gestures, rest first.</summary>
    public IReadOnlyList<string> Gestures => [LabelledWindows.Rest, .. Plan.Channels.Select(c => c.Gesture)];

    /// <summary>Reads and prepares the recordings of a purpose.</summary>
    /// <param name="hand">The hand.</param>
    /// <param name="handFile">Path of its file.</param>
    /// <param name="wear">Wear, or else gestures.</param>
    /// <param name="errors">Takes what is wrong.</param>
    /// <returns><see langword="null"/> if nothing can be used.</returns>
    public static SignalSet? Read(HandModel hand, string handFile, bool wear, ICollection<InputError> errors)
    {
        ArgumentNullException.ThrowIfNull(hand);
        ArgumentNullException.ThrowIfNull(errors);
        if (hand.Signals is not { } plan || plan.Channels.Count == 0)
        {
            errors.Add(new(handFile, 0, 0, "signals.channels", "no muscle signals", "a section [signals] with channels", "Add [signals.channels.NAME] with gesture = \"fist\", one for each pair of contacts."));
            return null;
        }

        if (!wear && !plan.Recordings.Any(r => !r.IsWear))
        {
            errors.Add(new(handFile, 0, 0, "signals.recordings", "no recording of gestures", "at least one", "Record each gesture some times on cue ('graspwright listen'), and add [signals.recordings.NAME] with file = \"signals/morning.csv\"."));
            return null;
        }

        List<LoadedRecording> usable = [];
        foreach (LoadedRecording loaded in SignalFiles.Read(hand, handFile, wear, errors))
        {
            if (Ordered(loaded, plan, handFile, errors) is { } ordered && SameUnits(ordered, usable, handFile, errors))
            {
                usable.Add(ordered with { Powers = WindowPowers.Of(ordered.Recording, plan.MainsHertz) });
            }
        }

        if (usable.Count == 0)
        {
            return null;
        }

        (SignalKind kind, string why) = KindOf(plan, usable);
        return new(plan, kind, why, usable);
    }

    /// <summary>The front end for a rate.</summary>
    /// <param name="rateHertz">Samples a second [1/s].</param>
    public FrontEnd FrontEnd(double rateHertz) => Graspwright.Signals.Filters.FrontEnd.Usual(rateHertz, Kind != SignalKind.Envelope, Plan.MainsHertz);

    /// <summary>Envelopes as the thresholds see them.</summary>
    public IReadOnlyList<Take> Takes() => Takes([.. Recordings.Select(Judged)]);

    /// <summary>Envelopes as the thresholds see them.</summary>
    /// <param name="readings">How the channels are connected, recording by recording.</param>
    public IReadOnlyList<Take> Takes(IReadOnlyList<IReadOnlyList<ContactReading>> readings)
    {
        ArgumentNullException.ThrowIfNull(readings);
        Take[] takes = new Take[Recordings.Count];
        Parallel.For(0, takes.Length, i =>
        {
            Recording recording = Recordings[i].Recording;
            takes[i] = new(recording.RateHertz, FrontEnd(recording.RateHertz).Envelopes(recording.Channels), recording.Marks, (int)Recordings[i].Plan.Donning) { Unusable = [.. readings[i].Select(c => c.Stretches)] };
        });
        return takes;
    }

    /// <summary>How each channel of a recording is connected.</summary>
    /// <param name="loaded">The recording.</param>
    public IReadOnlyList<ContactReading> Judged(LoadedRecording loaded)
    {
        ArgumentNullException.ThrowIfNull(loaded);
        return ContactJudging.Judge(loaded.Recording, loaded.Powers, Kind, new());
    }

    /// <summary>Unit of the values as it is shown, and the factor to it.</summary>
    public (string Unit, double Factor) Shown => Recordings[0].Recording.Channels[0].Unit switch { "V" => ("µV", 1e6), "" => ("counts", 1), var other => (other, 1) };

    private static LoadedRecording? Ordered(LoadedRecording loaded, MuscleSignals plan, string handFile, ICollection<InputError> errors)
    {
        List<Channel> channels = [];
        string[] known = [.. loaded.Recording.Channels.Select(c => c.Name)];
        foreach (SignalChannel wanted in plan.Channels)
        {
            if (loaded.Recording.Find(wanted.Name) is { } found)
            {
                channels.Add(found);
                continue;
            }

            string near = Nearest.To(wanted.Name, known) is { } n ? $"Did you mean {n}?" : "Name the channels of the hand file as the recording does, or the other way round.";
            errors.Add(new(SignalFiles.Beside(handFile, loaded.Plan.File), 0, 0, wanted.Name, $"no channel {wanted.Name}", string.Join(", ", known), near));
        }

        return channels.Count == plan.Channels.Count ? loaded with { Recording = loaded.Recording with { Channels = channels } } : null;
    }

    /// <summary>Levels of one recording mean nothing in another that counts in other units.</summary>
    private static bool SameUnits(LoadedRecording one, List<LoadedRecording> before, string handFile, ICollection<InputError> errors)
    {
        if (before.Count == 0 || one.Recording.Channels.Zip(before[0].Recording.Channels).All(p => p.First.Unit == p.Second.Unit))
        {
            return true;
        }

        errors.Add(new(handFile, 0, 0, $"signals.recordings.{one.Plan.Name}.file", $"a recording in {Word(one)}, while '{before[0].Plan.Name}' is in {Word(before[0])}", "all recordings in one unit",
            "Record all through the same amplifiers and the same program, or write the unit in brackets behind each channel's name. This one is left out."));
        return false;

        static string Word(LoadedRecording r) => string.Join(", ", r.Recording.Channels.Select(c => c.Unit.Length > 0 ? c.Unit : "counts").Distinct(StringComparer.Ordinal));
    }

    private static (SignalKind Kind, string Why) KindOf(MuscleSignals plan, IReadOnlyList<LoadedRecording> usable)
    {
        KindReading[] seen = [.. usable.SelectMany(r => r.Powers.Select(p => KindOfSignal.Of(p, r.Recording.RateHertz)))];
        int raw = seen.Count(s => s.Kind == SignalKind.Raw), smooth = seen.Count(s => s.Kind == SignalKind.Envelope);
        SignalKind found = raw > smooth ? SignalKind.Raw : smooth > raw ? SignalKind.Envelope : SignalKind.Unclear;
        if (plan.Kind.Length == 0)
        {
            return (found, found == SignalKind.Unclear ? seen[0].Why : string.Create(CultureInfo.InvariantCulture, $"{Math.Max(raw, smooth)} of {seen.Length} channels: {seen.First(s => s.Kind == found).Why}"));
        }

        SignalKind said = plan.Kind == "raw" ? SignalKind.Raw : SignalKind.Envelope;
        return (said, found == SignalKind.Unclear || found == said ? "as the hand file says" : $"the hand file says {plan.Kind}, but {seen.First(s => s.Kind == found).Why}");
    }
}
