using System.Text.RegularExpressions;

namespace Graspwright.Rules.Tests;

/// <summary>What the README tells a reader to type exists.</summary>
public sealed partial class ReadmeTests
{
    private static readonly string[] OptionsOfTheSdk = ["--project"];

    private static readonly string Program = string.Join('\n', Repository.Sources.Where(f => f.StartsWith("src/Graspwright.Cli/", StringComparison.Ordinal)).Select(Repository.Read));

    [Fact]
    public void Every_verb_of_the_readme_is_one_of_the_program() => Rule.Holds(Absent(Verbs(Repository.Read("README.md"))));

    [Fact]
    public void Every_option_of_the_readme_is_one_of_the_program() =>
        Rule.Holds(Absent(Options(Repository.Read("README.md")).Except(OptionsOfTheSdk, StringComparer.Ordinal)));

    [Fact]
    public void Every_file_of_the_readme_is_there() => Rule.Holds(
        from path in Places(Repository.Read("README.md"))
        where !Repository.Files.Any(f => f == path || f.StartsWith(path.TrimEnd('/') + "/", StringComparison.Ordinal))
        select path);

    [Fact]
    public void The_two_commands_stand_in_the_readme()
    {
        string text = Repository.Read("README.md");
        Assert.Contains("grip", Verbs(text));
        Assert.Contains("test", Places(text));
    }

    [Fact]
    public void The_reading_of_commands_finds_verbs_options_and_places()
    {
        const string Text = "Graspwright grips.\n\n    dotnet run --project src/A -c Release -- grip examples/b.toml --all-day\n    graspwright check \"x y\"\n    alias graspwright=\"dotnet $PWD/src/A/bin/a.dll\"\n    ./test\n";
        Assert.Equal(["grip", "check"], Verbs(Text));
        Assert.Equal(["--project", "--all-day"], Options(Text));
        Assert.Equal(["src/A", "examples/b.toml", "test"], Places(Text));
    }

    private static IEnumerable<string> Absent(IEnumerable<string> words) => words.Where(w => !Program.Contains($"\"{w}\"", StringComparison.Ordinal));

    private static IEnumerable<string> Verbs(string text) => Verb().Matches(text).Select(m => m.Groups["verb"].Value).Distinct(StringComparer.Ordinal);

    private static IEnumerable<string> Options(string text) => Option().Matches(text).Select(m => m.Value).Distinct(StringComparer.Ordinal);

    private static IEnumerable<string> Places(string text) => Place().Matches(text).Select(m => m.Groups["path"].Value).Distinct(StringComparer.Ordinal);

    [GeneratedRegex(@"((?<![\w/.])graspwright|\s--) (?<verb>[a-z]+)\b", RegexOptions.ExplicitCapture, 10_000)]
    private static partial Regex Verb();

    [GeneratedRegex(@"(?<![\w-])--[a-z][a-z-]*", RegexOptions.ExplicitCapture, 10_000)]
    private static partial Regex Option();

    [GeneratedRegex(@"(?<![\w/.$-])(\./)?(?<path>(src|tests|examples|benchmarks|docs|eng)/[\w./-]*\w|(?<=\./)test\b)", RegexOptions.ExplicitCapture, 10_000)]
    private static partial Regex Place();
}
