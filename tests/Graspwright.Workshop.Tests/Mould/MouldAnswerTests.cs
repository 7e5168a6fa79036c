using Graspwright.Hand;
using Graspwright.Moulding.Cure;
using Graspwright.Workshop.Mould;
using Graspwright.Workshop.Results;

namespace Graspwright.Workshop.Tests.Mould;

public sealed class MouldAnswerTests
{
    private static readonly HandModel[] Hands =
    [
        Boatyard.Hand,
        Boatyard.Changed("roll = \"22 s\"", "roll = \"70 s\"", "room = \"17 °C\"", "room = \"24 °C\"", "chilled_as = \"ball\"", "chilled_as = \"tub\""),
        Boatyard.Changed("chill = \"18 min\"", "chill = \"0 min\"", "elongation = \"120 %\"", "elongation = \"400 %\"", "ratio_a = 1", "ratio_a = 10"),
        Boatyard.Changed("shore_a = 25", "", "tear = \"8 N/mm\"", "", "price = 46\npack = \"500 g\"", ""),
    ];

    private static IEnumerable<Answer> Answers(HandModel hand) =>
        [LinerAnswer.Of(hand, "").Answer!, ClockAnswer.Of(hand, "").Result!.Answer, OffAnswer.Of(hand, "").Result!.Answer, CopiesAnswer.Of(hand, "").Answer!];

    [Fact]
    public void Every_printed_formula_gives_its_printed_value()
    {
        int evaluated = 0;
        foreach (Figure figure in Hands.SelectMany(Answers).SelectMany(a => a.Figures).Where(f => f.Working is not null))
        {
            double value = FormulaText.Evaluate(figure.Working!.Formula, figure.Working.Inputs.ToDictionary(i => i.Name, i => i.Value));
            Assert.Equal(figure.Value!.Value, value, 1e-9 * Math.Max(1, Math.Abs(value)));
            evaluated++;
        }

        Assert.True(evaluated > 100, $"{evaluated} formulas");
    }

    [Fact]
    public void Every_source_is_on_the_register()
    {
        HashSet<string> keys = [.. Source.All.Concat(MouldingSources.All).Select(s => s.Key)];
        Assert.All(Hands.SelectMany(Answers).SelectMany(a => a.Figures).Select(f => f.Working?.Source).OfType<string>(), key => Assert.Contains(key, keys));
        Assert.All(Inhibitors.Table.Rows, r => Assert.Contains(r[3].Text!, keys));
    }

    [Fact]
    public void Every_answer_has_a_sentence_cautions_and_a_change_for_what_fails() =>
        Assert.All(Hands.SelectMany(Answers), a =>
        {
            Assert.EndsWith(".", a.Sentence, StringComparison.Ordinal);
            Assert.Contains(a.Cautions, c => c.Contains("licensed", StringComparison.Ordinal));
            Assert.All(a.Findings.Where(f => f.Verdict is Verdict.Fails or Verdict.NotKnown), f => Assert.NotEmpty(f.Change));
            Assert.DoesNotContain("NaN", JsonAnswer.Write(a), StringComparison.Ordinal);
        });

    [Fact]
    public void Weighs_the_demo_by_hand_arithmetic()
    {
        Answer answer = LinerAnswer.Of(Boatyard.Hand, "").Answer!;
        double Of(string key) => answer.Figures.First(f => f.Key == key).Value!.Value;
        double density = 2 / (1 / 1.24 + 1 / 1.20);
        Assert.Equal(Of("sheet_area") * 0.3 * 1.05 / 0.9, Of("batch_volume"), 1e-9);
        Assert.Equal(Of("batch_volume") * density / 2, Of("weight_a"), 1e-9);
        Assert.Equal(Of("weight_a"), Of("weight_b"), 1e-9);
        Assert.Equal(46.0 / 500 * 2 * Of("weight_a"), Of("cost"), 1e-9);
    }

    [Fact]
    public void Divides_the_sheet_into_batches_when_it_cannot_be_worked_in_time()
    {
        Answer one = LinerAnswer.Of(Boatyard.Hand, "").Answer!, more = LinerAnswer.Of(Hands[1], "").Answer!;
        Assert.DoesNotContain(one.Tables, t => t.Name == "batches in order");
        Table order = more.Tables.First(t => t.Name == "batches in order");
        Assert.StartsWith($"Mix {order.Rows.Count} batches", more.Sentence, StringComparison.Ordinal);
        Assert.Contains("near edge", order.Rows[^1][1].Text, StringComparison.Ordinal);
    }

    [Fact]
    public void A_small_tub_is_explained_and_divides_the_batch()
    {
        Answer answer = LinerAnswer.Of(Boatyard.Changed("tub = \"300 ml\"", "tub = \"5 ml\""), "").Answer!;
        Finding tub = answer.Findings.First(f => f.Key == "tub");
        Assert.Equal(Verdict.Fails, tub.Verdict);
        Assert.StartsWith("The tub is too small", tub.Reason, StringComparison.Ordinal);
    }

    [Fact]
    public void Each_moment_lies_within_its_spread_and_in_order()
    {
        foreach (HandModel hand in Hands)
        {
            IReadOnlyList<SpreadOutput> spread = ClockAnswer.Of(hand, "").Result!.Spread;
            Assert.All(spread, s => Assert.True(s.Low < s.Value && s.Value < s.High));
            Assert.Equal([.. spread.Select(s => s.Value).Order()], [.. spread.Select(s => s.Value)]);
        }
    }

    [Fact]
    public void The_makers_tolerance_narrows_the_spread()
    {
        const string own = "\"liner.work.mix\" = \"10 s\"";
        SpreadOutput wide = ClockAnswer.Of(Boatyard.Hand, "").Result!.Spread[1];
        SpreadOutput narrow = ClockAnswer.Of(Boatyard.Changed(own, "\"liner.bench.hand_transfer\" = \"1 W/(m²·K)\""), "").Result!.Spread[1];
        Assert.True(narrow.High - narrow.Low < wide.High - wide.Low);
        Assert.Equal(wide.Value, narrow.Value, 1e-9);
    }

    [Fact]
    public void Puts_the_prediction_beside_common_practice_and_says_a_miss()
    {
        Table table = ClockAnswer.Of(Boatyard.Hand, "").Result!.Answer.Tables.First(t => t.Name.StartsWith("beside common practice", StringComparison.Ordinal));
        Assert.Equal(6, table.Rows.Count);
        Assert.Contains(table.Rows, r => r[4].Text!.Contains("a miss", StringComparison.Ordinal));
        Assert.Contains(table.Rows, r => r[4].Text!.Contains(" at ", StringComparison.Ordinal));
    }

    [Fact]
    public void An_input_that_closes_a_gap_really_closes_it()
    {
        // Hands off, not chilled, is said to be at 8 min: the share that closes it is put into the file and the clock asked again.
        HandModel warm = Boatyard.Changed("chill = \"18 min\"", "chill = \"0 min\"");
        Table table = ClockAnswer.Of(warm, "").Result!.Answer.Tables.First(t => t.Name.StartsWith("beside common practice", StringComparison.Ordinal));
        string closes = table.Rows[2][4].Text!;
        string share = closes.Split("how far on it may be touched at ")[1].Split(" %")[0];
        HandModel closed = Boatyard.Changed("chill = \"18 min\"", "chill = \"0 min\"", "tear = \"8 N/mm\"", $"hands_off_share = \"{share} %\"");
        Assert.Equal(480, ClockAnswer.Of(closed, "").Result!.Spread[2].Value, 5.0);
    }

    [Theory]
    [InlineData("17 °C", "65 %", true)]
    [InlineData("17 °C", "15 %", false)]
    public void Warns_of_dew_on_chilled_putty(string room, string humidity, bool wet)
    {
        HandModel hand = Boatyard.Changed("room = \"17 °C\"", $"room = \"{room}\"", "humidity = \"65 %\"", $"humidity = \"{humidity}\"", "chill = \"18 min\"", "chill = \"4 min\"");
        Finding dew = ClockAnswer.Of(hand, "").Result!.Answer.Findings.First(f => f.Key == "dew");
        Assert.Equal(wet ? Verdict.Fails : Verdict.Good, dew.Verdict);
    }

    [Fact]
    public void Lines_are_spoken_in_order_begin_with_mixing_and_hold_every_step()
    {
        IReadOnlyList<SpokenLine> lines = ClockAnswer.Of(Boatyard.Hand, "").Result!.Lines;
        Assert.Equal(0, lines[0].At);
        Assert.Equal([.. lines.Select(l => l.At).Order()], [.. lines.Select(l => l.At)]);
        string all = string.Join(' ', lines.Select(l => l.Text));
        Assert.All(new[] { "Mix now", "Roll it out", "Drape", "seams", "hollows", "Smooth it", "Hands off.", "leave the mould" }, w => Assert.Contains(w, all, StringComparison.Ordinal));
    }

    [Fact]
    public void Cuts_the_demo_where_a_cone_between_two_marks_says()
    {
        OffResult off = OffAnswer.Of(Boatyard.Hand, "").Result!;
        // Girth from 172 mm at 0 to 232 mm at 35 mm; the cut ends where what is left of the stretch is what the hole bears.
        double left = off.Stretch.Where(s => s.Place > off.Cut!.Value.To).Max(s => s.Stretch);
        double place = (232 / (1 + left) / 0.98 - 172) / 60 * 0.035;
        Assert.Equal(place, off.Cut!.Value.To, 6e-4);
        Assert.Equal(off.Cut.Value.To + 0.065, off.Cut.Value.Length, 1e-12);
        Assert.True(off.Answer.Figures.First(f => f.Key == "hole_diameter").Value <= 10);
    }

    [Fact]
    public void A_stretchy_putty_comes_off_whole_and_a_silent_label_is_not_guessed()
    {
        Assert.Contains("comes off whole", OffAnswer.Of(Hands[2], "").Result!.Answer.Sentence, StringComparison.Ordinal);
        OffResult silent = OffAnswer.Of(Boatyard.Changed("elongation = \"120 %\"", ""), "").Result!;
        Assert.Null(silent.Cut);
        Assert.Equal(Verdict.NotKnown, silent.Answer.Findings.First(f => f.Key == "stretch").Verdict);
    }

    [Fact]
    public void A_cut_that_finds_no_clear_line_says_what_stands_in_the_way()
    {
        HandModel hand = Boatyard.Changed("scar = {", "cuff = { kind = \"tender\", from = \"-65 mm\", to = \"80 mm\", angle_from = \"0 deg\", angle_to = \"355 deg\" }\nscar = {");
        Finding cut = OffAnswer.Of(hand, "").Result!.Answer.Findings.First(f => f.Key == "cut");
        Assert.Equal(Verdict.Fails, cut.Verdict);
        Assert.Contains(", 0 mm from the ", cut.Reason, StringComparison.Ordinal);
    }

    [Fact]
    public void The_copies_sum_to_the_fit_wanted()
    {
        Answer answer = CopiesAnswer.Of(Boatyard.Hand, "").Answer!;
        double off = answer.Figures.First(f => f.Key == "take_off").Value!.Value;
        // 232 mm of limb; a film out and in and out again, plaster twice 0.2 %, silicone 0.1 % back.
        double film = 2 * Math.PI * 0.05, negative = (232 + film) * 1.002, plaster = (negative - film) * 1.002, inside = (plaster + film) * 0.999;
        Assert.Equal((inside - 0.98 * 232) / (2 * Math.PI), off, 1e-9);
        Assert.Contains(answer.Tables.First(t => t.Name.StartsWith("materials", StringComparison.Ordinal)).Rows, r => r[6].Text!.StartsWith("yes", StringComparison.Ordinal));
    }

    [Fact]
    public void Says_what_is_missing()
    {
        HandModel bare = Boatyard.Hand with { Liner = null, Form = null, Copies = null };
        Assert.Equal(["liner"], LinerAnswer.Of(bare, "h").Errors.Select(e => e.Key));
        Assert.Equal(["liner", "form"], OffAnswer.Of(bare, "h").Errors.Select(e => e.Key));
        Assert.Equal(["liner", "form", "copies"], CopiesAnswer.Of(bare, "h").Errors.Select(e => e.Key));
        Assert.Equal(["liner.sheet_area"], ClockAnswer.Of(Boatyard.Hand with { Form = null }, "h").Errors.Select(e => e.Key));
    }
}
