using System.Text.RegularExpressions;
using System.Text.Json;

namespace Graspwright.Cli.Tests;

public sealed class BadInputTests
{
    public static TheoryData<string, string> BadValues => new()
    {
        { "stiffness = \"1400 N/mm\"\nanchor_pin", "stiffness = \"1400 mm\"\nanchor_pin" },
        { "pad_stiffness = \"14 N/mm\"", "pad_stiffness = \"-14 N/mm\"" },
        { "pad_stiffness = \"14 N/mm\"", "pad_stiffness = \"NaN N/mm\"" },
        { "pad_stiffness = \"14 N/mm\"", "pad_stiffness = 14" },
        { "pad_stiffness = \"14 N/mm\"", "pad_stiffness = \"1,4 N/mm\"" },
        { "pad_stiffness = \"14 N/mm\"", "pad_stifness = \"14 N/mm\"" },
        { "second = \"little\"", "second = \"ring\"" },
        { "second = \"little\"", "second = \"thumb\"" },
        { "range = [\"88 deg\", \"92 deg\", \"68 deg\"]", "range = [\"-88 deg\", \"92 deg\", \"68 deg\"]" },
        { "[\"-20 deg\", \"10.6 N·m\"], [\"10 deg\"", "[\"20 deg\", \"10.6 N·m\"], [\"10 deg\"" },
        { "[tolerances]", "[files]\nreadings = \"../../elsewhere.csv\"\n\n[tolerances]" },
        { "[wearer]", "[wearer" },
        { "name = \"root\"", "name = " + "DEEP" },
    };

    [Theory]
    [MemberData(nameof(BadValues))]
    public void Says_where_and_what_and_how_to_mend_it(string old, string replacement)
    {
        using Folder folder = new();
        string deep = new string('[', 2000) + new string(']', 2000);
        string hand = folder.Changed(old, replacement.Replace("DEEP", deep, StringComparison.Ordinal));

        Started run = Started.Run("grip", hand);

        Assert.Equal((2, ""), (run.Code, run.Answers));
        Assert.Matches("hand\\.toml:[0-9]+:[0-9]+: ", run.Talk);
        NoTrace(run);
    }

    [Fact]
    public void Refuses_what_is_no_hand_file()
    {
        using Folder folder = new();
        byte[] garbage = new byte[10_000_000];
        new Random(7).NextBytes(garbage);
        File.WriteAllBytes(folder["garbage.toml"], garbage);
        File.WriteAllText(folder["wide.toml"], File.ReadAllText(Started.Demo), System.Text.Encoding.Unicode);
        string[] names = [folder["missing.toml"], folder["garbage.toml"], folder["wide.toml"], folder.Write("empty.toml", ""), Path.GetDirectoryName(folder["x"])!];
        Assert.All(names, name =>
        {
            Started run = Started.Run("check", name);
            Assert.Equal((2, ""), (run.Code, run.Answers));
            Assert.Contains(name, run.Talk, StringComparison.Ordinal);
            NoTrace(run);
        });
    }

    [Theory]
    [InlineData("\r\n")]
    [InlineData("\n")]
    public void Reads_other_line_ends_and_a_byte_order_mark(string lineEnd)
    {
        using Folder folder = new();
        string text = File.ReadAllText(Started.Demo).ReplaceLineEndings(lineEnd);
        File.WriteAllText(folder["hand.toml"], text, new System.Text.UTF8Encoding(encoderShouldEmitUTF8Identifier: true));
        Assert.Equal(0, Started.Run("check", folder["hand.toml"]).Code);
    }

    [Fact]
    public void Refuses_a_zero_length_link()
    {
        using Folder folder = new();
        string demo = File.ReadAllText(Started.Demo);
        string text = Regex.Replace(demo, "input_arm = \"[^\"]*\"", "input_arm = \"0 mm\"", RegexOptions.None, TimeSpan.FromSeconds(1));
        Assert.NotEqual(demo, text);
        Started run = Started.Run("check", folder.Write("zero.toml", text));
        Assert.Equal((2, ""), (run.Code, run.Answers));
        NoTrace(run);
    }

    [Theory]
    [InlineData("grip")]
    [InlineData("grip", "HAND", "--jsn")]
    [InlineData("grip", "HAND", "--effort", "hard")]
    [InlineData("grip", "HAND", "--object", "bucket")]
    [InlineData("grip", "HAND", "--locks", "both")]
    [InlineData("grip", "HAND", "--csv", "/no/such/folder/states.csv")]
    [InlineData("squeeze", "HAND")]
    [InlineData()]
    public void Refuses_wrong_options_on_standard_error(params string[] args)
    {
        Started run = Started.Run([.. args.Select(a => a == "HAND" ? Started.Demo : a)]);
        Assert.Equal((2, ""), (run.Code, run.Answers));
        Assert.NotEmpty(run.Talk);
        NoTrace(run);
    }

    [Theory]
    [InlineData("Did you mean --object?", "grip", "HAND", "--objct", "mug")]
    [InlineData("Did you mean grip?", "gripp", "HAND")]
    [InlineData("Did you mean 'mug'?", "grip", "HAND", "--object", "mugg")]
    [InlineData("--at: 'abc'; allowed: degrees as a plain number", "grip", "HAND", "--at", "abc")]
    [InlineData("--lead: '0 s'; allowed: seconds as a plain number", "clock", "HAND", "--lead", "0 s")]
    [InlineData("--seed: '1.5'; allowed: a whole number", "search", "HAND", "--seed", "1.5")]
    [InlineData("HAND: nothing was given; allowed: the hand file", "grip")]
    public void Says_in_one_line_what_was_meant(string words, params string[] args)
    {
        Started run = Started.Run([.. args.Select(a => a == "HAND" ? Started.Demo : a)]);
        Assert.Equal((2, ""), (run.Code, run.Answers));
        Assert.Contains(words, Assert.Single(run.Talk.Split('\n', StringSplitOptions.RemoveEmptyEntries)), StringComparison.Ordinal);
    }

    [Fact]
    public void Refuses_a_view_beyond_the_travel_of_the_wrist()
    {
        using Folder folder = new();
        Started run = Started.Run("grip", Started.Demo, "--object", "mug", "--svg", folder["pictures"], "--at", "500");
        Assert.Equal((2, ""), (run.Code, run.Answers));
        Assert.Contains("0 to 38 deg", run.Talk, StringComparison.Ordinal);
    }

    [Fact]
    public void Takes_a_comment_behind_a_bare_number()
    {
        using Folder folder = new();
        Assert.Equal(0, Started.Run("check", folder.Changed("slot = 0.03", "slot = 0.03  # a small ball bearing")).Code);
    }

    [Fact]
    public void A_hand_that_is_valid_but_useless_is_an_answer_with_findings()
    {
        using Folder folder = new();
        Started run = Started.Run("grip", folder.Changed("stop = \"82 deg\"", "stop = \"1 deg\""), "--object", "mug", "--locks", "all free");
        Assert.Equal(0, run.Code);
        Assert.Contains("touches nothing", run.Answers, StringComparison.Ordinal);
        Assert.Contains("The crank meets its stop", run.Answers, StringComparison.Ordinal);
    }

    [Fact]
    public void Gives_errors_as_json_where_asked_for()
    {
        using Folder folder = new();
        string hand = folder.Changed("travel = \"38 deg\"", "travel = 38");
        Started run = Started.Run("grip", hand, "--json");

        Assert.Equal((2, ""), (run.Code, run.Talk));
        using JsonDocument json = JsonDocument.Parse(run.Answers);
        Assert.Equal(["tool", "verb", "errors"], json.RootElement.EnumerateObject().Select(p => p.Name));
        JsonElement error = json.RootElement.GetProperty("errors")[0];
        Assert.Equal(["file", "line", "column", "key", "found", "allowed", "fix"], error.EnumerateObject().Select(p => p.Name));
        Assert.Equal("wrist.travel", error.GetProperty("key").GetString());
        Assert.True(error.GetProperty("line").GetInt32() > 1);
    }

    private static void NoTrace(Started run)
    {
        Assert.DoesNotContain("   at ", run.Talk, StringComparison.Ordinal);
        Assert.DoesNotContain("Exception", run.Talk, StringComparison.Ordinal);
    }
}
