using System.Globalization;
using System.Text;
using System.Text.Json;
using Graspwright.Hand;
using Graspwright.Page.Changes;
using Graspwright.Page.Hands;
using Graspwright.Page.Pages;
using Graspwright.Page.Works;
using Graspwright.Workshop.Search;
using Change = Graspwright.Hand.Change;

namespace Graspwright.Page.Search;

/// <summary>What came of a search, with the file that was searched.</summary>
/// <param name="Result">The result, ended or stopped.</param>
/// <param name="Text">Text of the hand file that was searched.</param>
public sealed record Searched(SearchResult Result, string Text);

/// <summary>The search of the open hand: begun, watched, stopped, gone on with, and taken over into the file.</summary>
/// <remarks>It is kept in the same file as a stopped search of the verb, so that either goes on with the other's.</remarks>
/// <param name="open">The open hand.</param>
/// <param name="works">Takes the search.</param>
public sealed class SearchKeeping(OpenHand open, LongWorks works)
{
    private const string Key = "search", FileName = "search.checkpoint";
    private const long MostDesigns = 10_000_000;

    /// <summary>Where a search is kept.</summary>
    public string File => Path.Combine(open.Folder, FileName);

    /// <summary>The search that goes on, or the last one.</summary>
    public LongWork? Work => works.Find(Key);

    /// <summary>What the search found, or why there is nothing.</summary>
    public Told Told()
    {
        if (open.State.Reading.Hand is null)
        {
            return new(Key, null, [.. open.State.Reading.Errors.Select(HandAnswers.Error)]);
        }

        return Work?.Told is { } told ? told
            : open.State.Reading.Hand.Decisions.Searches.Count == 0 ? new(Key, null, [new(open.Path, 0, 0, "search", "the file describes no search", "at least one", "Add [search.\"first\"] with free paths and aims; see docs/search.md.")])
            : new(Key, null, [new(open.Path, 0, 0, "search", "it was not searched yet", "a search that was begun", "Begin it on the page.")]);
    }

    /// <summary>A search that was stopped and can be gone on with: its name, how many designs were judged of how many, its seed.</summary>
    /// <returns><see langword="null"/> = there is none for the file as it stands.</returns>
    public Stopped? Kept()
    {
        if (Editor() is not { } editor || !System.IO.File.Exists(File))
        {
            return null;
        }

        try
        {
            string text = System.IO.File.ReadAllText(File);
            using JsonDocument json = JsonDocument.Parse(text);
            JsonElement top = json.RootElement;
            string name = top.GetProperty("Search").GetString() ?? "";
            long seed = top.GetProperty("Seed").GetInt64(), all = top.GetProperty("Evaluations").GetInt64(), judged = top.GetProperty("Judged").GetInt64();
            return editor.Reading.Hand!.Decisions.Searches.FirstOrDefault(s => s.Name == name) is { } search && Checkpoint.Read(text, FileName, editor, search, new() { Seed = seed, Evaluations = all }).State is not null
                ? new(name, judged, all, seed, text)
                : null;
        }
        catch (Exception other) when (other is JsonException or IOException or UnauthorizedAccessException or InvalidOperationException or KeyNotFoundException or FormatException)
        {
            return null; // it is no file of a search of ours; a new one does not touch it before it has something to keep
        }
    }

    /// <summary>Begins a search.</summary>
    /// <param name="name">Name of the search.</param>
    /// <param name="evaluations">How many designs, as typed; empty = the file's number.</param>
    /// <param name="seed">Seed, as typed; empty = the file's.</param>
    /// <param name="polish">Whether the point to try first is polished.</param>
    public Outcome Begin(string name, string evaluations, string seed, bool polish)
    {
        if (Whole(evaluations, 1, MostDesigns) is not { } designs)
        {
            return Wrong("how many designs", evaluations, $"a whole number from 1 to {MostDesigns}");
        }

        return Whole(seed, 0, long.MaxValue) is { } chance ? Start(name, designs < 0 ? null : designs, chance < 0 ? null : chance, polish, null) : Wrong("seed", seed, "a whole number from 0");
    }

    /// <summary>Goes on with the search that was stopped.</summary>
    public Outcome GoOn() => Kept() is { } kept
        ? Start(kept.Name, kept.All, kept.Seed, polish: false, kept)
        : Wrong("search", "nothing to go on with", "a stopped search of this file as it is");

    /// <summary>Puts a point of the front into the hand file; undo takes it back.</summary>
    /// <param name="point">Its number, from 1.</param>
    /// <param name="polished">The polished one instead.</param>
    public Outcome Apply(int point, bool polished)
    {
        if (Work?.Told?.Result is not Searched { Result.Study: { } study } || point < 1 || point > study.Front.Count)
        {
            return Wrong("point", point.ToString(CultureInfo.InvariantCulture), "a point of the front");
        }

        IReadOnlyList<string> names = study.Variants.Names, texts = study.Variants.Texts(polished && study.Polished is { } better ? better.Values : study.Front[point - 1].Values);
        int free = study.Search.Free.Count;
        PathValue[] values = [.. names.Take(free).Zip(texts, (path, text) => new PathValue(path, text))];
        string words = $"taking number {point} of the search ‘{study.Search.Name}’";
        HashSet<string> made = [.. names.Zip(texts).Skip(free).Where(n => n.Second == "made").Select(n => n.First)];
        return made.Count == 0 ? open.Edit(values, words) : open.Edit(editor => WithChanges(editor, values, made), words);
    }

    private EditResult WithChanges(HandEditor editor, IReadOnlyList<PathValue> values, HashSet<string> made)
    {
        Change[] changes = [.. editor.Reading.Hand!.Decisions.Changes.Where(c => made.Contains(c.Name))];
        EditResult edit = ChangeMaking.Made(editor, open.Path, changes);
        foreach (PathValue value in values)
        {
            if (edit.Editor is null)
            {
                return edit;
            }

            edit = edit.Editor.Set(value.Path, value.Text);
        }

        return edit;
    }

    private Outcome Start(string name, long? evaluations, long? seed, bool polish, Stopped? from)
    {
        if (Editor() is not { } editor)
        {
            return new(open.State.Reading.Errors);
        }

        if (Work is { Goes: true })
        {
            return Outcome.Done; // a second touch does not begin again
        }

        if (editor.Reading.Hand!.Decisions.Searches.FirstOrDefault(s => s.Name == name) is not { } search)
        {
            return Wrong("search", name, "the name of a search of the file");
        }

        // One core is left for the page.
        SearchQuestion question = new(editor) { File = open.Path, Name = name, Evaluations = evaluations, Seed = seed, Polish = polish, ResumeFrom = from?.Text, Threads = Math.Max(1, Environment.ProcessorCount - 1) };
        long all = evaluations ?? search.Evaluations, judged = from?.Judged ?? 0;
        works.Begin(new(Key, $"The search ‘{name}’", "designs", "search"), work => Run(question, judged, all, work));
        open.Tell();
        return Outcome.Done;
    }

    private Told Run(SearchQuestion question, long judged, long all, LongWork work)
    {
        work.Count(judged, all);
        SearchResult result = Searching.Answer(question with
        {
            Stop = work.Stop,
            Watch = state =>
            {
                work.SoFar = state;
                work.Count(state.Judged, all, string.Create(CultureInfo.InvariantCulture, $"{state.Front.Count} on the front, {state.Inside} inside the limits"));
            },
        });
        if (result.Study is { } study)
        {
            string part = File + ".part";
            System.IO.File.WriteAllText(part, study.Checkpoint, new UTF8Encoding(false));
            System.IO.File.Move(part, File, overwrite: true);
        }

        return new(Key, result.Answer, result.Errors, new Searched(result, question.Editor.Source.Text.Text));
    }

    private HandEditor? Editor() => open.State.Reading.Hand is null ? null : HandEditor.Open(open.State.Reading, open.Folder);

    /// <summary>A whole number as typed; −1 where nothing is typed, <see langword="null"/> where it is none.</summary>
    private static long? Whole(string text, long least, long most) => text.Trim().Length == 0 ? -1
        : long.TryParse(text.Trim().Replace(" ", "", StringComparison.Ordinal), NumberStyles.None, CultureInfo.InvariantCulture, out long value) && value >= least && value <= most ? value : null;

    private Outcome Wrong(string key, string found, string allowed) => new([new(open.Path, 0, 0, key, $"'{found}'", allowed, "correct it and begin again")]);
}

/// <summary>A search that was stopped, or ended, and is kept.</summary>
/// <param name="Name">Its name.</param>
/// <param name="Judged">How many designs were judged.</param>
/// <param name="All">Of how many.</param>
/// <param name="Seed">Its seed.</param>
/// <param name="Text">The file in which it is kept.</param>
public sealed record Stopped(string Name, long Judged, long All, long Seed, string Text);
