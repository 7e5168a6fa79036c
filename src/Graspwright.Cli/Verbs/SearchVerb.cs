using System.CommandLine;
using System.Diagnostics;
using System.Globalization;
using Graspwright.Deciding.Search;
using Graspwright.Drawing.Svg;
using Graspwright.Hand;
using Graspwright.Workshop.Results;
using Graspwright.Workshop.Search;
using Graspwright.Workshop.Views;

namespace Graspwright.Cli.Verbs;

/// <summary><c>search HAND</c>: which designs are best in several aims at once and keep all limits?</summary>
internal sealed class SearchVerb() : Verb("search", "Search for the designs that are best in several aims at once and keep every limit.")
{
    private const double SecondsBetweenWords = 1;

    private readonly Option<string> _name = new("--search") { Description = "Name of a search of the file; without it, the first.", HelpName = "NAME", DefaultValueFactory = _ => "" };
    private readonly Option<long?> _seed = new("--seed") { Description = "Another seed than the file's.", HelpName = "NUMBER" };
    private readonly Option<long?> _evaluations = new("--evaluations") { Description = "How many designs are tried, instead of the file's number.", HelpName = "NUMBER" };
    private readonly Option<int> _threads = new("--threads") { Description = "How many threads judge designs; the result is the same for any. Without it, one a core.", HelpName = "NUMBER" };
    private readonly Option<string?> _checkpoint = new("--checkpoint") { Description = "Where a stopped search is kept; without it, search.checkpoint beside the hand file.", HelpName = "FILE" };
    private readonly Option<string?> _resume = new("--resume") { Description = "Go on with a search that was stopped.", HelpName = "FILE" };
    private readonly Option<bool> _polish = new("--polish") { Description = "Polish the point to try first: the first aim is made better without loss in the others." };
    private readonly Option<int?> _point = new("--point") { Description = "Number of the point that --write takes; without it, the one to try first.", HelpName = "NUMBER" };
    private readonly Option<string?> _write = new("--write") { Description = "Write the hand file with a point of the front, comments kept.", HelpName = "FILE" };
    private readonly Option<string?> _csv = new("--csv") { Description = "Write the whole front.", HelpName = "FILE" };
    private readonly Option<string?> _svg = new("--svg") { Description = "Draw the front.", HelpName = "FILE" };

    /// <inheritdoc/>
    protected override void Describe(Command command)
    {
        command.Add(Hand);
        command.Add(_name);
        command.Add(_seed);
        command.Add(_evaluations);
        command.Add(_threads);
        command.Add(_checkpoint);
        command.Add(_resume);
        command.Add(_polish);
        command.Add(_point);
        command.Add(_write);
        command.Add(_csv);
        command.Add(_svg);
    }

    /// <inheritdoc/>
    protected override Reply Answer(ParseResult parsed, Terminal terminal)
    {
        string path = parsed.GetRequiredValue(Hand);
        Positive("--evaluations", parsed.GetValue(_evaluations) ?? 1);
        Positive("--threads", parsed.GetResult(_threads) is null ? 1 : parsed.GetValue(_threads));
        (HandModel hand, HandSource source) = HandInput.Read(path);
        SearchQuestion question = new(HandInput.Editor(path, new(hand, [], source)))
        {
            File = path,
            Name = parsed.GetValue(_name)!,
            Seed = parsed.GetValue(_seed),
            Evaluations = parsed.GetValue(_evaluations),
            Threads = parsed.GetValue(_threads),
            Polish = parsed.GetValue(_polish),
            ResumeFrom = parsed.GetValue(_resume) is { } resume ? Resumed(resume) : null,
        };
        SearchResult result = Search(question, terminal);
        if (result is not { Answer: { } answer, Study: { } study })
        {
            throw new BadInputException(result.Errors);
        }

        if (!study.Ended)
        {
            string file = parsed.GetValue(_checkpoint) ?? Path.Combine(Path.GetDirectoryName(Path.GetFullPath(path))!, "search.checkpoint");
            WholeFile.Write(file, study.Checkpoint, "--checkpoint");
            terminal.Talk.WriteLine($"Stopped after {study.State.Judged} designs; go on with --resume {file}");
        }

        Write(parsed, terminal, hand, study);
        return Reply.Of(answer, study.Ended ? ExitCode.Answered : ExitCode.Stopped);
    }

    private static SearchResult Search(SearchQuestion question, Terminal terminal)
    {
        using CancellationTokenSource stop = new();
        Stopwatch clock = Stopwatch.StartNew();
        double said = 0;
        long from = -1;
        void Say(SearchState state)
        {
            from = from < 0 ? state.Judged : from;
            if (clock.Elapsed.TotalSeconds - said < SecondsBetweenWords)
            {
                return;
            }

            said = clock.Elapsed.TotalSeconds;
            terminal.Talk.WriteLine(string.Create(CultureInfo.InvariantCulture,
                $"{state.Judged} designs, {(state.Judged - from) / said:0} a second; {state.Front.Count} on the front, {state.Inside} inside the limits, {state.Failed} failed"));
        }

        Interruption.Finish = stop.Cancel;
        try
        {
            return Searching.Answer(question with { Watch = Say, Stop = stop.Token });
        }
        finally
        {
            Interruption.Finish = null;
        }
    }

    private void Write(ParseResult parsed, Terminal terminal, HandModel hand, SearchStudy study)
    {
        if (parsed.GetValue(_csv) is { } csv)
        {
            WholeFile.Write(csv, CsvTable.Write(FrontTables.Whole(study)), "--csv");
            terminal.Talk.WriteLine($"Wrote {csv}");
        }

        if (parsed.GetValue(_svg) is { } svg && study.Front.Count > 0)
        {
            WholeFile.Write(svg, SvgWriter.Write(FrontView.Draw(hand.Name, study), "front"), "--svg");
            terminal.Talk.WriteLine($"Wrote {svg}");
        }

        if (parsed.GetValue(_write) is not { } write)
        {
            return;
        }

        int point = parsed.GetValue(_point) ?? study.Chosen + 1;
        if (point < 1 || point > study.Front.Count)
        {
            throw new BadInputException(new InputError("command line", 0, 0, "--point", $"{point}", study.Front.Count > 0 ? $"1 to {study.Front.Count}" : "nothing: no design keeps every limit", "Take a number of the front's table."));
        }

        bool polished = study.Polished is not null && parsed.GetValue(_point) is null;
        EditResult edit = polished ? study.Variants.Edited(study.Polished!.Values) : study.Edit(point - 1);
        if (edit.Editor is not { } edited)
        {
            throw new BadInputException([.. edit.Errors.Select(HandInput.Error)]);
        }

        WholeFile.Write(write, edited.Source.Text.ToBytes(), "--write");
        terminal.Talk.WriteLine($"Wrote {write} with point {point}{(polished ? ", polished" : "")}");
    }

    private static string Resumed(string file)
    {
        try
        {
            return File.ReadAllText(file);
        }
        catch (Exception refusal) when (refusal is IOException or UnauthorizedAccessException)
        {
            throw new BadInputException(new InputError(file, 0, 0, "--resume", $"the file cannot be read ({refusal.Message.TrimEnd('.')})", "a file that a stopped search left", "Check its name and folder."));
        }
    }

    private static void Positive(string option, long value)
    {
        if (value < 1)
        {
            throw new BadInputException(new InputError("command line", 0, 0, option, $"'{value}'", "1 or more", "Give a whole number above 0."));
        }
    }
}
