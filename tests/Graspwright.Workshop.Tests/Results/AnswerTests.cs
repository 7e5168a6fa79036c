using System.Text.Json;
using Graspwright.Workshop.Results;

namespace Graspwright.Workshop.Tests.Results;

public sealed class AnswerTests
{
    private static readonly Answer Made = new()
    {
        Verb = "grip",
        Hand = "my \"first\" hand",
        Sentence = "It grips – barely.",
        Situation = "mug/all free",
        Figures =
        [
            new("grip_force", "grip force", "N") { Value = 1.0 / 3, Low = 0.3, High = 0.4, Working = new("a/b", [new("a", 1, "N"), new("b", 3, "")], "drive-model") },
            new("shift_cost", "shift", "deg") { Why = "the crank's arm is fixed" },
        ],
        Findings =
        [
            new("shift", "slot", Verdict.NotKnown, "Not measured.", "Measure it."),
            new("reopens", "fingers", Verdict.Good, "It opens.", "Nothing.") { Figure = 0.5, Limit = 1, Unit = "deg", Margin = 0.5 },
        ],
        Situations = [new("mug", "all free", "all-day")],
        Tables = [new("states", [new("object", ""), new("wrist", "deg"), new("grip", "N")], [["a \"mug\", big", 12.34567891234, double.NaN]])],
        Cautions = ["Mind your fingers."],
    };

    [Fact]
    public void Writes_json_in_the_shape_and_order_of_the_house()
    {
        using JsonDocument json = JsonDocument.Parse(JsonAnswer.Write(Made));
        JsonElement root = json.RootElement;
        Assert.Equal(["tool", "verb", "hand", "answer", "situation", "figures", "findings", "situations", "tables", "cautions"], root.EnumerateObject().Select(p => p.Name));
        Assert.Equal("my \"first\" hand", root.GetProperty("hand").GetString());
        JsonElement figure = root.GetProperty("figures").GetProperty("grip_force");
        Assert.Equal(["value", "unit", "low", "high", "working"], figure.EnumerateObject().Select(p => p.Name));
        Assert.Equal(0.3333333333, figure.GetProperty("value").GetDouble());
        Assert.Equal(3, figure.GetProperty("working").GetProperty("inputs").GetProperty("b").GetProperty("value").GetDouble());
        JsonElement none = root.GetProperty("figures").GetProperty("shift_cost");
        Assert.Equal(JsonValueKind.Null, none.GetProperty("value").ValueKind);
        Assert.Equal("the crank's arm is fixed", none.GetProperty("why").GetString());
        Assert.Equal(["key", "subject", "verdict", "figure", "limit", "unit", "margin", "reason", "change"], root.GetProperty("findings")[0].EnumerateObject().Select(p => p.Name));
        Assert.Equal("not known", root.GetProperty("findings")[0].GetProperty("verdict").GetString());
        Assert.Equal(["object", "locks", "effort", "figures", "findings", "tables"], root.GetProperty("situations")[0].EnumerateObject().Select(p => p.Name));
        JsonElement row = root.GetProperty("tables").GetProperty("states").GetProperty("rows")[0];
        Assert.Equal("a \"mug\", big", row[0].GetString());
        Assert.Equal(12.34567891, row[1].GetDouble());
        Assert.Equal(JsonValueKind.Null, row[2].ValueKind);
    }

    [Fact]
    public void Writes_errors_in_their_shape()
    {
        using JsonDocument json = JsonDocument.Parse(JsonAnswer.WriteErrors("check", [new("hand.toml", 3, 7, "wrist.travel", "38", "an angle", "write \"38 deg\"")]));
        Assert.Equal(["tool", "verb", "errors"], json.RootElement.EnumerateObject().Select(p => p.Name));
        Assert.Equal(7, json.RootElement.GetProperty("errors")[0].GetProperty("column").GetInt32());
    }

    [Fact]
    public void Writes_csv_with_units_in_brackets_and_quotes_where_needed() =>
        Assert.Equal("object,wrist [deg],grip [N]\n\"a \"\"mug\"\", big\",12.34567891,\n", CsvTable.Write(Made.Tables[0]));

    [Fact]
    public void Writes_text_that_begins_with_the_sentence_and_marks_each_verdict()
    {
        string text = TextAnswer.Write(Made, "a chart");
        Assert.StartsWith("It grips – barely.\n", text, StringComparison.Ordinal);
        Assert.Contains("? not known: Not measured.", text, StringComparison.Ordinal);
        Assert.Contains("● good: It opens.", text, StringComparison.Ordinal);
        Assert.Contains("\na chart\n", text, StringComparison.Ordinal);
        Assert.Contains("12.3", text, StringComparison.Ordinal);
        Assert.Contains("Mind your fingers.", text, StringComparison.Ordinal);
        Assert.All(text.Split('\n'), line => Assert.True(line.Length <= 102, line));
    }

    [Fact]
    public void An_error_says_place_key_found_allowed_and_fix() =>
        Assert.Equal("hand.toml:3:7: wrist.travel: 38; allowed: an angle. Write it so.", new InputError("hand.toml", 3, 7, "wrist.travel", "38", "an angle", "Write it so.").Text);

    [Fact]
    public void Speaks_elsewhere_first_of_situations_like_the_headline()
    {
        Finding Fails(string reason) => new("pushed_out", "object", Verdict.Fails, reason, "Move it.");
        Figure[] figures = [];
        Answer answer = Made with
        {
            Figures = figures,
            Findings = [],
            Situations =
            [
                new("mug", "all free", "all-day") { Figures = figures },
                new("mug", "point", "squeeze") { Figures = [Made.Figures[0]], Findings = [Fails("less alike")] },
                new("rail", "all free", "all-day") { Figures = [Made.Figures[0]], Findings = [Fails("most alike")] },
            ],
        };
        string text = TextAnswer.Write(answer);
        Assert.Contains("rail/all free, all-day (and in 1 more): most alike", text, StringComparison.Ordinal);
        Assert.DoesNotContain("less alike", text, StringComparison.Ordinal);
    }
}
