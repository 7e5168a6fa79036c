using System.Collections.Concurrent;
using System.Globalization;
using Graspwright.Hand;
using Graspwright.Page.Hands;
using Graspwright.Page.Search;
using Graspwright.Page.Works;
using Graspwright.Workshop.Changes;
using Graspwright.Workshop.Dose;
using Graspwright.Workshop.Form;
using Graspwright.Workshop.Grip;
using Graspwright.Workshop.Jobs;
using Graspwright.Workshop.Lives;
using Graspwright.Workshop.Log;
using Graspwright.Workshop.Mould;
using Graspwright.Workshop.Postures;
using Graspwright.Workshop.Results;
using Graspwright.Workshop.Room;
using Graspwright.Workshop.Signals;
using Graspwright.Workshop.Spares;
using Graspwright.Workshop.Strength;
using Graspwright.Workshop.Thumb;

namespace Graspwright.Page.Pages;

/// <summary>What each verb answers about the open hand, worked out once for each version of its files and only when asked for.</summary>
/// <param name="open">The open hand.</param>
/// <param name="works">Takes what is worked out at length.</param>
public sealed class HandAnswers(OpenHand open, LongWorks works)
{
    private static readonly Dictionary<string, LongName> Long = new(StringComparer.Ordinal)
    {
        ["changes"] = new("changes", "The changes", "sets of changes", "changes"),
        ["form"] = new("form", "The form", "", "pattern"),
        ["pattern"] = new("pattern", "The paper pattern", "", "pattern"),
    };

    private readonly ConcurrentDictionary<string, Lazy<Told>> _told = new(StringComparer.Ordinal);
    private static readonly TimeSpan Patience = TimeSpan.FromMilliseconds(60);
    private readonly Lock _gate = new();
    private readonly Dictionary<string, string> _begun = new(StringComparer.Ordinal);
    private (int, int) _of;

    /// <summary>Long works on this hand.</summary>
    public LongWorks Works => works;

    /// <summary>The answer of a verb; what is long is waited for.</summary>
    /// <param name="verb">The verb.</param>
    public Told Of(string verb) => verb switch
    {
        "search" => new SearchKeeping(open, works).Told(),
        _ when Long.ContainsKey(verb) => Waited(Work(verb, again: true), verb),
        _ => Short(verb),
    };

    private Told Short(string verb) => Once(verb, hand => verb switch
    {
        "grip" => Grip(hand),
        "jobs" => Jobs(hand),
        "thumb" => Pair(verb, Thumbing.Answer(hand, open.Path)),
        "room" => Rooming.Answer(hand, open.Path) is var room ? new(verb, room.Answer, room.Errors, room) : throw new InvalidOperationException(),
        "postures" => Pair(verb, Posturing.Answer(hand, open.Path)),
        "dose" => Pair(verb, Dosing.Answer(new(hand) { File = open.Path })),
        "breaks" => Breaking.Answer(new(hand) { File = open.Path }) is var breaks ? new(verb, breaks.Answer, breaks.Errors, breaks) : throw new InvalidOperationException(),
        "lasts" => Lasts(hand),
        "lives" => FromLog(verb, hand, log => LivesAnswer.Of(new(hand, log, null, null)) is var lives ? (lives.Answer, lives) : default),
        "spares" => FromLog(verb, hand, log => SparesAnswer.Of(hand, log, null) is var spares ? (spares.Answer, spares) : default),
        "liner" => Pair(verb, LinerAnswer.Of(hand, open.Path)),
        "clock" => ClockAnswer.Of(hand, open.Path) is var (clock, errors) ? new(verb, clock?.Answer, errors, clock) : throw new InvalidOperationException(),
        "off" => OffAnswer.Of(hand, open.Path) is var (off, faults) ? new(verb, off?.Answer, faults, off) : throw new InvalidOperationException(),
        "copies" => Pair(verb, CopiesAnswer.Of(hand, open.Path)),
        "contacts" => ContactsAnswer.Answer(hand, open.Path) is var contacts ? new(verb, contacts.Answer, contacts.Errors, contacts) : throw new InvalidOperationException(),
        "sites" => SitesAnswer.Answer(hand, open.Path) is var sites ? new(verb, sites.Answer, sites.Errors, sites) : throw new InvalidOperationException(),
        "thresholds" => ThresholdsAnswer.Answer(hand, open.Path) is var levels ? new(verb, levels.Answer, levels.Errors, levels) : throw new InvalidOperationException(),
        _ => throw new ArgumentException($"No page asks '{verb}'.", nameof(verb)),
    });

    /// <summary>The answer of a verb if it is there already or soon; else it is worked out while the page is looked at, and the page is told when it is there.</summary>
    /// <param name="verb">The verb.</param>
    /// <returns><see langword="null"/> = it is being worked out.</returns>
    public Told? Soon(string verb)
    {
        if (Long.ContainsKey(verb))
        {
            LongWork work = Work(verb);
            _ = work.Wait(Patience);
            return work.Told;
        }

        Task<Told> task = Task.Run(() => Of(verb));
        if (task.Wait(Patience))
        {
            return task.Result;
        }

        _ = task.ContinueWith(_ => open.Tell(), CancellationToken.None, TaskContinuationOptions.OnlyOnRanToCompletion, TaskScheduler.Default);
        return null;
    }

    /// <summary>The long work behind a verb for the files as they stand, begun if it was not.</summary>
    /// <param name="verb">The verb.</param>
    /// <param name="again">Begin it again if it was stopped.</param>
    public LongWork Work(string verb, bool again = false)
    {
        lock (_gate)
        {
            string now = StateFor(verb);
            if (works.Find(verb) is { } work && _begun.GetValueOrDefault(verb) == now && (work.Goes || work.Told is not null || !again))
            {
                return work;
            }

            _begun[verb] = now;
            return works.Begin(Long[verb], verb == "changes" ? Changes : w => OfLimb(verb, w.Stop));
        }
    }

    /// <summary>What a long work was begun for. Form and pattern look at the limb and its liner alone, and go on while the drive is changed.</summary>
    private string StateFor(string verb)
    {
        HandState state = open.State;
        return verb != "changes" && state.Reading.Hand is { Form: not null } hand
            ? string.Create(CultureInfo.InvariantCulture, $"{open.Beside} {hand.Name} {hand.Side} {HandWriter.WritePart(hand, "form")} {(hand.Liner is null ? "" : HandWriter.WritePart(hand, "liner"))}")
            : string.Create(CultureInfo.InvariantCulture, $"{state.Version} {open.Beside}");
    }

    private Told OfLimb(string verb, CancellationToken stop)
    {
        HandState state = open.State;
        if (state.Reading.Hand is not { } hand)
        {
            return new(verb, null, [.. state.Reading.Errors.Select(Error)]);
        }

        if (verb == "form")
        {
            FormResult form = FormAnswer.Of(hand, open.Path, stop: stop);
            return new(verb, form.Answer, form.Errors, form);
        }

        PatternResult pattern = PatternAnswer.Of(hand, open.Path, stop: stop);
        return new(verb, pattern.Answer, pattern.Errors, pattern);
    }

    private static Told Waited(LongWork work, string verb)
    {
        _ = work.Wait(Timeout.InfiniteTimeSpan);
        return work.Told ?? new(verb, null, [new("", 0, 0, verb, "it was stopped", "an answer", "begin it again")]);
    }

    private Told Changes(LongWork work)
    {
        HandState state = open.State;
        if (state.Reading.Hand is null || HandEditor.Open(state.Reading, open.Folder) is not { } editor)
        {
            return new("changes", null, [.. state.Reading.Errors.Select(Error)]);
        }

        work.Count(0, 0);
        ChangesResult result = Changing.Answer(new(editor) { File = open.Path, Watch = (done, all) => work.Count(done, all), Stop = work.Stop });
        return new("changes", result.Answer, result.Errors, result);
    }

    /// <summary>Something worked out once for each version of the files.</summary>
    /// <param name="key">Its name.</param>
    /// <param name="make">Works it out from the hand.</param>
    public Told Once(string key, Func<HandModel, Told> make)
    {
        HandState state = open.State;
        (int, int) of = (state.Version, open.Beside);
        lock (_gate)
        {
            if (of != _of)
            {
                _told.Clear();
                _of = of;
            }
        }

        return _told.GetOrAdd(key, _ => new(() => state.Reading.Hand is { } hand ? make(hand) : new(key, null, [.. state.Reading.Errors.Select(Error)]))).Value;
    }

    /// <summary>An error of a hand file in the shape of answers.</summary>
    /// <param name="error">The error.</param>
    public static InputError Error(HandError error)
    {
        ArgumentNullException.ThrowIfNull(error);
        return new(error.File, error.Line, error.Column, error.Key, error.Found, error.Allowed, error.Fix);
    }

    private Told Grip(HandModel hand)
    {
        GripResult result = Gripping.Answer(new(hand) { File = open.Path });
        return new("grip", result.Answer, result.Errors, result);
    }

    private Told Jobs(HandModel hand)
    {
        JobsResult result = Jobbing.Answer(new(hand) { File = open.Path, Jobs = [] });
        return new("jobs", result.Answer, result.Errors, result);
    }

    private Told Lasts(HandModel hand)
    {
        (IReadOnlyList<double>? history, IReadOnlyList<InputError> errors) = MomentHistory.Of(hand, open.Path);
        if (errors.Count > 0)
        {
            return new("lasts", null, errors);
        }

        LifeResult result = Lasting.Answer(new(hand) { File = open.Path, History = history });
        return new("lasts", result.Answer, result.Errors, result);
    }

    private Told FromLog(string verb, HandModel hand, Func<LogReading, (Answer, object)> answer)
    {
        (LogReading? log, IReadOnlyList<InputError> errors) = LogFile.Read(hand, open.Path);
        if (log is null)
        {
            return new(verb, null, errors);
        }

        (Answer told, object result) = answer(log);
        return new(verb, told, [], result);
    }

    private static Told Pair(string verb, (Answer? Answer, IReadOnlyList<InputError> Errors) told) => new(verb, told.Answer, told.Errors);
}
