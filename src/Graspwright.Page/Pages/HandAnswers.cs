using System.Collections.Concurrent;
using Graspwright.Hand;
using Graspwright.Page.Hands;
using Graspwright.Workshop.Dose;
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
public sealed class HandAnswers(OpenHand open)
{
    private readonly ConcurrentDictionary<string, Lazy<Told>> _told = new(StringComparer.Ordinal);
    private static readonly TimeSpan Patience = TimeSpan.FromMilliseconds(60);
    private readonly Lock _gate = new();
    private (int, int) _of;

    /// <summary>The answer of a verb.</summary>
    /// <param name="verb">The verb.</param>
    public Told Of(string verb) => Once(verb, hand => verb switch
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
        Task<Told> task = Task.Run(() => Of(verb));
        if (task.Wait(Patience))
        {
            return task.Result;
        }

        _ = task.ContinueWith(_ => open.Tell(), CancellationToken.None, TaskContinuationOptions.OnlyOnRanToCompletion, TaskScheduler.Default);
        return null;
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
