using System.Text.RegularExpressions;

namespace Graspwright.Rules.Tests;

/// <summary>Keys of sources: what code names is listed, and what is registered is told to the reader.</summary>
public sealed partial class SourceKeyTests
{
    private const string List = "docs/sources.md";

    private static IEnumerable<string> Registers =>
        Repository.Sources.Where(f => f.StartsWith("src/", StringComparison.Ordinal) && Repository.Read(f).Contains("SourceStanding.", StringComparison.Ordinal));

    [Fact]
    public void Every_source_named_beside_code_is_listed()
    {
        HashSet<string> listed = Listed(Repository.Read(List));
        Rule.Holds(
            from file in Repository.Sources
            where file.StartsWith("src/", StringComparison.Ordinal)
            from key in Named(Repository.Read(file))
            where !listed.Contains(key)
            select $"{file} names the source '{key}', which {List} lacks");
    }

    [Fact]
    public void Every_registered_source_is_listed()
    {
        string[] keys = [.. Registers.SelectMany(r => Registered(Repository.Read(r)))];
        Assert.NotEmpty(keys);
        Rule.Holds(keys.Except(Listed(Repository.Read(List)), StringComparer.Ordinal));
    }

    [Fact]
    public void The_reading_of_keys_finds_them()
    {
        Assert.Equal(["lathe-1900"], Named("/// <source key=\"lathe-1900\">Page 3.</source>"));
        Assert.Equal(["lathe-1900", "no-play"], Registered("new(\"lathe-1900\", \"A lathe\", 1), new(\"no-play\", \"none\"); new(\"Not a key\", 2)"));
        Assert.Equal(["lathe-1900", "no-play", "no-give"], Listed("| `lathe-1900` | x |\n| `no-play`, `no-give` | `inside-a-cell` |\n`outside-1`"));
    }

    private static IEnumerable<string> Named(string text) => Beside().Matches(text).Select(m => m.Groups["key"].Value);

    private static IEnumerable<string> Registered(string text) => Entry().Matches(text).Select(m => m.Groups["key"].Value);

    private static HashSet<string> Listed(string text) =>
        [.. FirstCell().Matches(text).SelectMany(row => Quoted().Matches(row.Value)).Select(m => m.Groups["key"].Value)];

    [GeneratedRegex(@"<source key=""(?<key>[^""]*)""", RegexOptions.ExplicitCapture, 10_000)]
    private static partial Regex Beside();

    [GeneratedRegex(@"\bnew\(\s*""(?<key>[a-z0-9]+(-[a-z0-9]+)+)""\s*,", RegexOptions.ExplicitCapture, 10_000)]
    private static partial Regex Entry();

    [GeneratedRegex(@"^\|[^|]*\|", RegexOptions.ExplicitCapture | RegexOptions.Multiline, 10_000)]
    private static partial Regex FirstCell();

    [GeneratedRegex(@"`(?<key>[^`]*)`", RegexOptions.ExplicitCapture, 10_000)]
    private static partial Regex Quoted();
}
