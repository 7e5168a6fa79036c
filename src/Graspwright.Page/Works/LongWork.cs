using System.Globalization;
using Graspwright.Page.Pages;

namespace Graspwright.Page.Works;

/// <summary>One piece of long work: how far it is, how it is stopped, and what came of it. It goes on whether or not a page is looked at.</summary>
public sealed class LongWork : IDisposable
{
    private const double TellEverySeconds = 0.1;
    private static long _numbers;
    private readonly TimeProvider _time;
    private readonly Action<LongWork> _tell;
    private readonly CancellationTokenSource _stop = new();
    private readonly Lock _gate = new();
    private readonly long _begun;
    private long _done, _all, _from = -1, _told;
    private string _besides = "";
    private Task<Told> _task = null!;

    private LongWork(LongName name, TimeProvider time, Action<LongWork> tell)
    {
        Name = name;
        _time = time;
        _tell = tell;
        _begun = time.GetTimestamp();
    }

    /// <summary>What it is called, and where.</summary>
    public LongName Name { get; }

    /// <summary>Its number, unlike that of any other.</summary>
    public long Number { get; } = Interlocked.Increment(ref _numbers);

    /// <summary>Asked to stop.</summary>
    public CancellationToken Stop => _stop.Token;

    /// <summary>Whether it still goes on.</summary>
    public bool Goes => !_task.IsCompleted;

    /// <summary>Whether it was asked to stop.</summary>
    public bool StopAsked => _stop.IsCancellationRequested;

    /// <summary>What came of it; <see langword="null"/> = it goes on, or was stopped before there was anything.</summary>
    public Told? Told => !_task.IsCompleted || _task.IsCanceled ? null
        : _task.Exception is { InnerException: { } fault } ? new(Name.Key, null, [new("", 0, 0, Name.Key, $"a fault of this program: {fault.GetType().Name}, {fault.Message.TrimEnd('.')}", "an answer", "report it, with the hand file; other pages go on")])
        : _task.Result;

    /// <summary>How much is done.</summary>
    public long Done
    {
        get
        {
            lock (_gate)
            {
                return _done;
            }
        }
    }

    /// <summary>How much there is; 0 = not known.</summary>
    public long All
    {
        get
        {
            lock (_gate)
            {
                return _all;
            }
        }
    }

    /// <summary>For how long it has gone on, whole seconds.</summary>
    public int Seconds => (int)_time.GetElapsedTime(_begun).TotalSeconds;

    /// <summary>What there is of the answer on the way; <see langword="null"/> = nothing that can be shown.</summary>
    public object? SoFar { get; set; }

    /// <summary>How far it is, in words: how many of how many, how many a second, how long still; else for how long it has gone on.</summary>
    public string Words
    {
        get
        {
            double seconds = _time.GetElapsedTime(_begun).TotalSeconds;
            lock (_gate)
            {
                if (_all == 0)
                {
                    return string.Create(CultureInfo.InvariantCulture, $"going on for {(int)seconds} s{_besides}");
                }

                double rate = seconds > 0 ? (_done - Math.Max(_from, 0)) / seconds : 0;
                string left = rate > 0 && _done < _all ? string.Create(CultureInfo.InvariantCulture, $", {(rate >= 10 ? $"{rate:0}" : $"{rate:0.#}")} a second, about {Span((_all - _done) / rate)} more") : "";
                return string.Create(CultureInfo.InvariantCulture, $"{_done} of {_all} {Name.What}{left}{_besides}");
            }
        }
    }

    /// <summary>Begins.</summary>
    /// <param name="name">What it is called.</param>
    /// <param name="work">Does it.</param>
    /// <param name="time">Where the time comes from.</param>
    /// <param name="tell">Told now and then how far it is, and when it has ended.</param>
    internal static LongWork Begin(LongName name, Func<LongWork, Told> work, TimeProvider time, Action<LongWork> tell)
    {
        LongWork begun = new(name, time, tell);
        begun._task = new(() => work(begun), begun._stop.Token, TaskCreationOptions.LongRunning);
        _ = begun._task.ContinueWith(_ => tell(begun), CancellationToken.None, TaskContinuationOptions.ExecuteSynchronously, TaskScheduler.Default);
        begun._task.Start(TaskScheduler.Default); // only now, as the work itself asks whether it goes on
        return begun;
    }

    /// <summary>Says how far it is; may be called from several threads. What was done at the first call was done before this work began.</summary>
    /// <param name="done">How much is done.</param>
    /// <param name="all">How much there is.</param>
    /// <param name="besides">What else there is to say.</param>
    public void Count(long done, long all, string besides = "")
    {
        lock (_gate)
        {
            _from = _from < 0 ? done : _from;
            _done = Math.Max(_done, done);
            _all = all;
            _besides = besides.Length > 0 ? "; " + besides : "";
            if (_told != 0 && _time.GetElapsedTime(_told).TotalSeconds < TellEverySeconds)
            {
                return;
            }

            _told = _time.GetTimestamp();
        }

        _tell(this);
    }

    /// <summary>Asks it to stop.</summary>
    public void End() => _stop.Cancel();

    /// <summary>Frees what belongs to a work that has ended; one that goes on keeps it.</summary>
    public void Dispose()
    {
        if (_task.IsCompleted)
        {
            _stop.Dispose();
            _task.Dispose();
        }
    }

    /// <summary>Waits for what comes of it.</summary>
    /// <param name="longest">How long at most.</param>
    /// <returns>Whether it has ended.</returns>
    public bool Wait(TimeSpan longest)
    {
        try
        {
            return _task.Wait(longest);
        }
        catch (AggregateException) when (_task.IsCompleted)
        {
            return true; // what went wrong, or that it was stopped, is told by Told
        }
    }

    private static string Span(double seconds) => seconds < 90
        ? string.Create(CultureInfo.InvariantCulture, $"{Math.Max(1, Math.Round(seconds)):0} s")
        : string.Create(CultureInfo.InvariantCulture, $"{seconds / 60:0.#} min");
}

/// <summary>What a long work is called.</summary>
/// <param name="Key">Its key.</param>
/// <param name="Words">What is done, such as "The search".</param>
/// <param name="What">What is counted, such as "designs".</param>
/// <param name="Page">Address of the page where its answer stands.</param>
public sealed record LongName(string Key, string Words, string What, string Page);
