using System.Globalization;
using Graspwright.Hand;
using Graspwright.Workshop.Measuring;
using Graspwright.Workshop.Results;

namespace Graspwright.Workshop.Tests.Measuring;

public sealed class MeasuringTests
{
    private const string File = "sheet.csv";

    [Fact]
    public void The_empty_sheet_reads_back_once_filled()
    {
        HandModel hand = MadeHand.Boatyard();
        string[] lines = SheetCsv.Blank(hand).TrimEnd('\n').Split('\n');
        Assert.Equal(Protocol.Lines(hand).Count + 1, lines.Length);
        string filled = string.Join('\n', lines.Select((l, i) => i == 0 ? l : Fill(l)));
        (IReadOnlyList<Reading> readings, IReadOnlyList<InputError> errors) = SheetCsv.Read(filled, File);
        Assert.Empty(errors);
        Assert.Equal(Protocol.Lines(hand).Select(l => (l.Measurement, l.Where, l.When, l.Try)), readings.Select(r => (r.Measurement, r.Where, r.When, r.Try)));
        Assert.Equal(0.012, readings.First(r => r.Measurement == Measurement.Girth).Value, 1e-12);
    }

    [Fact]
    public void Angles_cover_the_travel_every_ten_degrees() =>
        Assert.Equal([-20, -10, 0, 10, 20, 30], Protocol.Angles(MadeHand.Boatyard())); // start −12°, travel 38°

    [Theory]
    [InlineData("100,N", 100)]
    [InlineData("10.197162129779283,kg", 100)]
    [InlineData("22.48089430997105,lb", 100)]
    public void A_scale_may_show_newtons_kilograms_or_pounds(string pull, double newtons)
    {
        Reading read = Assert.Single(Read($"flexion,,,0,1,{pull},80,mm,,,,,"));
        Assert.Equal(newtons, read.Value, 1e-9);
        Assert.Equal(newtons * 0.08, read.Moment, 1e-9);
    }

    [Theory]
    [InlineData("flexon,,,0,1,100,N,80,mm,,,,,", "measurement", "flexion")]
    [InlineData("flexion,,,0,1,100,mm,80,mm,,,,,", "value", "N")]
    [InlineData("flexion,,,0,1,100,,80,mm,,,,,", "value", "unit")]
    [InlineData("flexion,,,0,1,100,N,,mm,,,,,", "lever", "lever_unit")]
    [InlineData("flexion,,,0,1,100,N,0,mm,,,,,", "lever", "above 0")]
    [InlineData("flexion,,,,1,100,N,80,mm,,,,,", "angle_deg", "degrees")]
    [InlineData("flexion,,,0,1,100,N,80,mm,,,,", "measurement", "cells")]
    [InlineData("flexion,,,0,1,10,5,N,80,mm,,,,,", "measurement", "cells")]
    [InlineData("flexion,,,0,1,-3,N,80,mm,,,,,", "value", "0 or more")]
    public void Bad_cells_are_named_with_line_and_column(string row, string key, string says)
    {
        (IReadOnlyList<Reading> readings, IReadOnlyList<InputError> errors) = SheetCsv.Read($"{SheetCsv.Header}\n{row}\n", File);
        Assert.Empty(readings);
        InputError error = Assert.Single(errors);
        Assert.Equal((2, key), (error.Line, error.Key));
        Assert.True(error.Column >= 1);
        Assert.Contains(says, error.Text, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("")]
    [InlineData("a;b;c")]
    [InlineData("\0\u0001garbage")]
    public void What_is_no_sheet_is_refused(string text) => Assert.NotEmpty(SheetCsv.Read(text, File).Errors);

    [Fact]
    public void The_same_try_twice_is_refused() =>
        Assert.Contains(SheetCsv.Read($"{SheetCsv.Header}\nflexion,,,0,1,100,N,80,mm,,,,,\nflexion,,,0,1,90,N,80,mm,,,,,\n", File).Errors, e => e is { Line: 3, Key: "try" });

    // The one published peak as it would be read with each slip: the slip must be among the explanations, and no doubt without it.
    [Theory]
    [InlineData(Measurement.Flexion, 12.2)]
    [InlineData(Measurement.Extension, 7.1)]
    [InlineData(Measurement.Flexion, 7.8)]
    public void A_mistaken_unit_is_found_by_the_published_strength(Measurement direction, double moment)
    {
        Assert.Empty(Plausibility.Explain(direction, moment));
        foreach ((double factor, string words) in ((double, string)[])[(9.80665, "kilograms and written as newtons"), (0.1, "millimetres and written as centimetres"), (25.4, "inches"), (0.001, "metres"), (1 / 9.80665, "newtons were written as kilograms")])
        {
            Assert.Contains(Plausibility.Explain(direction, moment / factor), s => s.Words.Contains(words, StringComparison.Ordinal));
        }
    }

    [Fact]
    public void Kilograms_written_as_newtons_are_asked_about()
    {
        MeasuredWearer wearer = new(MadeHand.Boatyard(), Read("flexion,,,0,1,13.5,N,80,mm,,,,,", "flexion,,,0,2,13.9,N,80,mm,,,,,"));
        InputError doubt = Assert.Single(MeasuringAnswer.Doubts(wearer, File));
        Assert.Equal(2, doubt.Line);
        Assert.Contains("kilograms", doubt.Fix, StringComparison.Ordinal);
        Assert.Contains("--as-written", doubt.Fix, StringComparison.Ordinal);
    }

    [Fact]
    public void A_weak_wrist_that_no_slip_explains_is_believed() => Assert.Empty(Plausibility.Explain(Measurement.Flexion, 4.1));

    [Fact]
    public void One_try_is_said_to_be_one_and_has_no_interval()
    {
        Answer answer = Answered("flexion,,,0,1,140,N,80,mm,,,,,");
        Assert.Contains(answer.Findings, f => f is { Key: "one_try", Verdict: Verdict.NotKnown });
        Figure peak = answer.Figures.Single(f => f.Key == "flexion_peak");
        Assert.Equal((11.2, null, null), (Math.Round(peak.Value!.Value, 9), peak.Low, peak.High));
    }

    [Fact]
    public void Tries_that_disagree_are_shown_and_left_out_of_the_hand_file()
    {
        string[] rows = [.. Pulls(0, 140, 141, 139), .. Pulls(10, 100, 140, 142), .. Pulls(20, 144, 146, 145), .. Pulls(30, 143, 145, 144)];
        Answer answer = Answered(rows);
        Finding apart = Assert.Single(answer.Findings, f => f.Key == "tries_disagree");
        Assert.Equal("flexion at 10°", apart.Subject);
        Assert.Contains("8.0, 11.2, 11.4", apart.Reason, StringComparison.Ordinal);
        Assert.Contains("Tries disagree at 10°", answer.Sentence, StringComparison.Ordinal);
        string written = Replaced(rows).Single(r => r.Path == "wrist.capacity.flexion").After;
        Assert.DoesNotContain("10 deg", written, StringComparison.Ordinal);
        Assert.Contains("[\"20 deg\", \"11.6 N·m\"]", written, StringComparison.Ordinal);
    }

    [Fact]
    public void Strength_that_ends_inside_the_travel_is_a_failure()
    {
        Answer answer = Answered([.. Pulls(-20, 140, 141, 139), .. Pulls(0, 120, 121, 119), .. Pulls(20, 0, 1, 0.5)]);
        Assert.Contains(answer.Findings, f => f is { Key: "capacity_gone", Verdict: Verdict.Fails } && f.Reason.Contains("20°", StringComparison.Ordinal));
        Assert.Contains(answer.Findings, f => f.Key == "travel_not_covered"); // to 26°
    }

    [Theory]
    [InlineData(25, 100, Verdict.Tight)]
    [InlineData(25, 300, Verdict.Good)]
    [InlineData(50, 60, Verdict.Good)]
    [InlineData(5, 600, Verdict.NotKnown)]
    public void Holding_is_held_against_the_published_band(int percent, double seconds, Verdict verdict) =>
        Assert.Contains(Answered(string.Create(CultureInfo.InvariantCulture, $"hold,{percent} %,,,1,{seconds},s,,,,,,,")).Findings, f => f.Key.StartsWith("hold", StringComparison.Ordinal) && f.Verdict == verdict);

    [Fact]
    public void The_cuff_is_found_behind_the_shell_with_its_late_return()
    {
        const double cuff = 1.7, shell = 6.5, late = 0.13, seat = 0.4, lever = 0.08, arm = 0.14;
        double together = 1 / (1 / cuff + 1 / shell), end = 140 * lever;
        List<string> rows = [];
        foreach ((string when, double[] pulls) in ((string, double[])[])[("loading", [20, 50, 80, 110, 140]), ("unloading", [140, 110, 80, 50, 20])])
        {
            for (int i = 0; i < pulls.Length; i++)
            {
                double moment = pulls[i] * lever, angle = seat + moment / together * (1 + (when == "loading" ? 0 : 3 * late * (1 - moment / end)));
                rows.Add(string.Create(CultureInfo.InvariantCulture, $"give,fingers blocked,{when},,{i + 1},{pulls[i]},N,80,mm,{1000 * arm * Math.Tan(double.DegreesToRadians(angle)):R},mm,140,mm,"));
            }
        }

        HandModel hand = MadeHand.Boatyard();
        MeasuredWearer wearer = new(hand with { Give = hand.Give with { ShellStiffness = shell * 180 / Math.PI } }, Read([.. rows]));
        GiveFit fit = wearer.Give!;
        Assert.Equal(together, MeasuredWearer.PerDegree(fit.Total), 1e-9);
        Assert.Equal(cuff, MeasuredWearer.PerDegree(fit.Cuff), 1e-9);
        Assert.Equal(late, fit.Hysteresis, 1e-9);
        Assert.Equal(seat, double.RadiansToDegrees(fit.SeatRadians), 1e-9);
        Assert.Equal(0, fit.TotalDeviation, 1e-6);
    }

    [Fact]
    public void The_demo_sheet_tells_the_story_of_its_readme_and_its_formulas_give_its_figures()
    {
        (IReadOnlyList<Reading> readings, IReadOnlyList<InputError> errors) = SheetCsv.Read(System.IO.File.ReadAllText(Path.Combine(Path.GetDirectoryName(MadeHand.File)!, "measured.csv")), "measured.csv");
        Assert.Empty(errors);
        HandEditor editor = HandEditor.Open(MadeHand.Read())!;
        MeasuredWearer wearer = new(MadeHand.Boatyard(), readings);
        Assert.Empty(MeasuringAnswer.Doubts(wearer, "measured.csv"));
        IReadOnlyList<Replacement> replaced = wearer.Replacements(editor);
        EditResult edited = MeasuredWearer.Apply(editor, replaced);
        Assert.Equal(["wrist.capacity.flexion", "wrist.capacity.extension", "give.cuff", "give.hysteresis", "wrist.speed", "wrist_range.flexion", "wrist_range.extension", "thumb.pinch"], replaced.Take(8).Select(r => r.Path));
        Assert.Contains(replaced, r => r is { Path: "thumb.postures.opposed.pad", After: "[\"121 mm\", \"-57 mm\", \"22 mm\"]" });
        Assert.Contains(replaced, r => r.Path.StartsWith("room.stumps.", StringComparison.Ordinal));
        Assert.Contains("# three layers of felt under the cuff", edited.Editor!.Source.Text.Text, StringComparison.Ordinal);
        Assert.DoesNotContain(edited.Editor.Reading.Hand!.Guesses, g => g.Path.StartsWith("wrist.capacity", StringComparison.Ordinal));
        Answer answer = MeasuringAnswer.Read(wearer, replaced, applied: false, edited.Editor.Reading.Hand!);
        Assert.Equal(["flexion at 10°"], answer.Findings.Where(f => f.Key == "tries_disagree").Select(f => f.Subject));
        Assert.True(answer.Figures.Count >= 7);
        Assert.All(answer.Figures, f =>
        {
            Assert.NotNull(f.Working);
            Assert.Equal(f.Value!.Value, FormulaText.Evaluate(f.Working.Formula, f.Working.Inputs.ToDictionary(i => i.Name, i => i.Value, StringComparer.Ordinal)), 1e-9 * Math.Abs(f.Value.Value));
        });
        Assert.Equal(answer.Figures.Count, answer.Figures.Select(f => f.Key).Distinct(StringComparer.Ordinal).Count());
    }

    [Fact]
    public void A_new_posture_and_a_new_stump_come_into_the_file_and_its_comments_stay()
    {
        string text = MadeHand.Read().Source!.Text.Text.Replace("ring = [\"76 mm\", \"-1 mm\"]\n", "", StringComparison.Ordinal);
        string[] axes = [.. Protocol.ThumbReadings.Select(a => a.Word())];
        string[] rows =
        [
            .. axes.Select((axis, i) => string.Create(CultureInfo.InvariantCulture, $"{axis},key grip,,,,{100 + i},mm,,,,,,,")),
            .. axes.Take(5).Select((axis, i) => string.Create(CultureInfo.InvariantCulture, $"{axis},half measured,,,,{100 + i},mm,,,,,,,")),
            $"{Measurement.StumpX.Word()},ring,,,,74,mm,,,,,,,", $"{Measurement.StumpY.Word()},ring,,,,-2,mm,,,,,,,",
        ];
        HandEditor editor = HandEditor.Open(HandFile.Parse(text, "hand.toml"))!;
        MeasuredWearer wearer = new(editor.Reading.Hand!, Read(rows));
        IReadOnlyList<Replacement> replaced = wearer.Replacements(editor);
        Assert.Equal(["thumb.postures.\"key grip\"", "room.stumps.ring"], replaced.Select(r => r.Path));
        HandModel after = MeasuredWearer.Apply(editor, replaced).Editor!.Reading.Hand!;
        Assert.Equal(new SpacePoint(0.100, 0.101, 0.102), after.Thumb!.Postures.Single(p => p.Name == "key grip").Pad);
        Assert.Equal(new Point(0.074, -0.002), after.Room!.Stumps.Single(s => s.Finger == "ring").Place);
        Assert.Equal(4, after.Thumb.Postures.Count);
        string written = MeasuredWearer.Apply(editor, replaced).Editor!.Source.Text.Text;
        Assert.All(text.Split('\n').Where(l => l.Contains('#', StringComparison.Ordinal)), l => Assert.Contains(l, written, StringComparison.Ordinal));
    }

    private static string[] Pulls(double angle, params double[] newtons) =>
        [.. newtons.Select((n, i) => string.Create(CultureInfo.InvariantCulture, $"flexion,,,{angle},{i + 1},{n},N,80,mm,,,,,"))];

    private static IReadOnlyList<Reading> Read(params string[] rows)
    {
        (IReadOnlyList<Reading> readings, IReadOnlyList<InputError> errors) = SheetCsv.Read($"{SheetCsv.Header}\n{string.Join('\n', rows)}\n", File);
        Assert.Empty(errors);
        return readings;
    }

    private static IReadOnlyList<Replacement> Replaced(string[] rows) => new MeasuredWearer(MadeHand.Boatyard(), Read(rows)).Replacements(HandEditor.Open(MadeHand.Read())!);

    private static Answer Answered(params string[] rows)
    {
        MeasuredWearer wearer = new(MadeHand.Boatyard(), Read(rows));
        return MeasuringAnswer.Read(wearer, [], applied: false, wearer.Hand);
    }

    private static string Fill(string line)
    {
        string[] cells = line.Split(',');
        cells[5] = "12";
        cells[7] = cells[8].Length > 0 ? "80" : "";
        (cells[9], cells[11]) = cells[10].Length > 0 ? ("2", "140") : ("", "");
        return string.Join(',', cells);
    }
}
