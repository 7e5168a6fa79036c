using System.Text;
using Graspwright.Drawing;
using Graspwright.Hand;
using Graspwright.Signals.Quality;
using Graspwright.Signals.Recordings;
using Graspwright.Workshop.Results;

namespace Graspwright.Workshop.Signals;

/// <summary>A recording with what the hand file says about it.</summary>
/// <param name="Plan">What the hand file says.</param>
/// <param name="Recording">What the file holds.</param>
public sealed record LoadedRecording(SignalRecording Plan, Recording Recording)
{
    /// <summary>Powers of each channel, window by window; empty until they are wanted.</summary>
    public IReadOnlyList<WindowPowers> Powers { get; init; } = [];
}

/// <summary>Reads the recordings that a hand file names.</summary>
public static class SignalFiles
{
    private const int Piece = 1 << 18;

    /// <summary>Reads every recording of a purpose.</summary>
    /// <param name="hand">The hand, with signals.</param>
    /// <param name="handFile">Path of the hand file.</param>
    /// <param name="wear">Wear, or else gestures.</param>
    /// <param name="errors">Takes what cannot be used.</param>
    public static IReadOnlyList<LoadedRecording> Read(HandModel hand, string handFile, bool wear, ICollection<InputError> errors)
    {
        ArgumentNullException.ThrowIfNull(hand);
        ArgumentNullException.ThrowIfNull(errors);
        List<LoadedRecording> loaded = [];
        foreach (SignalRecording plan in hand.Signals!.Recordings.Where(r => r.IsWear == wear))
        {
            if (One(hand.Signals, plan, handFile, errors) is { } recording)
            {
                loaded.Add(new(plan, recording));
            }
        }

        return loaded;
    }

    /// <summary>Reads a file by what it begins with: EDF, BDF, WAV, or else a table.</summary>
    /// <param name="path">Path.</param>
    /// <param name="hints">What is known of a table.</param>
    /// <exception cref="RecordingException">It cannot be used.</exception>
    public static Recording Read(string path, TableHints hints)
    {
        using FileStream file = new(path, FileMode.Open, FileAccess.Read, FileShare.Read, bufferSize: 1);
        byte[] piece = new byte[Piece];
        int first = file.ReadAtLeast(piece.AsSpan(0, 512), 512, throwOnEndOfStream: false);
        ReadOnlySpan<byte> head = piece.AsSpan(0, first);
        if (EdfReader.Begins(head) || WavReader.Begins(head))
        {
            bool edf = EdfReader.Begins(head);
            byte[] whole = new byte[file.Length];
            head.CopyTo(whole);
            file.ReadExactly(whole.AsSpan(first));
            return edf ? EdfReader.Read(whole) : WavReader.Read(whole);
        }

        TableReader table = new(hints);
        table.Feed(head);
        for (int n = file.Read(piece); n > 0; n = file.Read(piece))
        {
            table.Feed(piece.AsSpan(0, n));
        }

        return table.Finish();
    }

    /// <summary>Path of a file that the hand file names.</summary>
    /// <param name="handFile">Path of the hand file.</param>
    /// <param name="name">Name in it.</param>
    public static string Beside(string handFile, string name) => Path.Combine(Path.GetDirectoryName(Path.GetFullPath(handFile))!, name);

    /// <summary>Runs what reads a file, and tells what is wrong with it in the words of the answers.</summary>
    /// <typeparam name="T">What reading gives.</typeparam>
    /// <param name="name">Name of the file.</param>
    /// <param name="key">Key that names it.</param>
    /// <param name="errors">Takes what is wrong.</param>
    /// <param name="read">Reads it.</param>
    /// <param name="namedIn">File whose key names it, which is at fault if it is not there; <see langword="null"/> = none does.</param>
    /// <param name="line">Line of that file; 0 = not known here.</param>
    public static T? Trying<T>(string name, string key, ICollection<InputError> errors, Func<T> read, string? namedIn = null, int line = 0)
        where T : class
    {
        ArgumentNullException.ThrowIfNull(errors);
        ArgumentNullException.ThrowIfNull(read);
        try
        {
            return read();
        }
        catch (RecordingException bad)
        {
            errors.Add(new(name, bad.Line, bad.Column, bad.Key, bad.Found, bad.Allowed, bad.Fix));
        }
        catch (DrawingFileException bad)
        {
            foreach (FileFault fault in bad.Faults)
            {
                errors.Add(new(fault.File, fault.Line, fault.Column, fault.Key, fault.Found, fault.Allowed, fault.Fix));
            }
        }
        catch (Exception refusal) when (namedIn is not null && !File.Exists(name) && refusal is IOException or UnauthorizedAccessException)
        {
            string[] beside = Directory.Exists(Path.GetDirectoryName(name)) ? [.. Directory.GetFiles(Path.GetDirectoryName(name)!).Select(f => Path.GetFileName(f)!)] : [];
            string near = Nearest.To(Path.GetFileName(name), beside) is { } n ? $"Did you mean {n}?" : "Check its name and folder; it counts from the folder of this file.";
            errors.Add(new(namedIn!, line, line > 0 ? 1 : 0, key, Directory.Exists(name) ? $"the file {Path.GetFileName(name)} is a folder" : $"the file {Path.GetFileName(name)} is not there", $"a file at {name}", near));
        }
        catch (Exception refusal) when (refusal is IOException or UnauthorizedAccessException)
        {
            errors.Add(new(name, 0, 0, key, File.Exists(name) ? $"the file cannot be read ({refusal.Message.TrimEnd('.')})" : "the file is not there", "a recording beside the hand file", "Check its name and folder."));
        }

        return null;
    }

    private static Recording? One(MuscleSignals signals, SignalRecording plan, string handFile, ICollection<InputError> errors)
    {
        string key = $"signals.recordings.{plan.Name}";
        string path = Beside(handFile, plan.File);
        bool headless = plan.RateHertz is not null;
        TableHints hints = new() { RateHertz = plan.RateHertz ?? double.NaN, Names = headless ? [.. signals.Channels.Select(c => c.Name)] : [] };
        Recording? recording = Trying(path, key + ".file", errors, () => Read(path, hints), handFile);
        if (recording is null || plan.Cues.Length == 0)
        {
            return recording is null ? null : recording with { Marks = CueList.Ended(recording.Marks, recording.Seconds) };
        }

        string cues = Beside(handFile, plan.Cues);
        IReadOnlyList<Mark>? marks = Trying(cues, key + ".cues", errors, () => CueList.Read(File.ReadAllText(cues, Encoding.UTF8)), handFile);
        return marks is null ? null : recording with { Marks = marks };
    }
}
