using System.Text.RegularExpressions;

namespace Graspwright.Rules.Tests;

/// <summary>What no file of the repository says.</summary>
public sealed partial class WordingTests
{
    private static IEnumerable<string> Elsewhere => Repository.TextFiles.Where(f => !f.StartsWith("tests/Graspwright.Rules.Tests/", StringComparison.Ordinal));

    [Fact]
    public void No_file_names_a_folder_of_one_machine() => Rule.Holds(Found(Elsewhere, MachinePath()));

    [Fact]
    public void Only_tests_look_beside_the_repository() =>
        Rule.Holds(Found(Elsewhere.Where(f => !f.StartsWith("tests/", StringComparison.Ordinal)), BesideTheRepository()));

    [Fact]
    public void No_file_refers_to_the_number_of_an_issue() => Rule.Holds(Found(Elsewhere.Where(f => !f.EndsWith(".svg", StringComparison.Ordinal)), IssueNumber()));

    [Fact]
    public void No_file_tells_how_it_came_about() => Rule.Holds(Found(Elsewhere, Making()));

    [Theory]
    [InlineData("written in an earlier session", true)]
    [InlineData("obsession, possession", false)]
    public void Words_about_the_making_are_known(string text, bool found) => Assert.Equal(found, Making().IsMatch(text));

    [Theory]
    [InlineData("see /tmp/x", true)]
    [InlineData("C:\\Users\\me", true)]
    [InlineData("file:///home/me/a", true)]
    [InlineData("a/tmp/x, the work/rest ratio", false)]
    public void A_machines_folder_is_known_by_its_top(string text, bool found) => Assert.Equal(found, MachinePath().IsMatch(text));

    [Theory]
    [InlineData("as issue 2 says", true)]
    [InlineData("Issue #41", true)]
    [InlineData("fixed (#12).", true)]
    [InlineData("closes #7", true)]
    [InlineData("fill=\"#333\" color:#112233; stroke: #123; &#176; #0.0 #region an issue of 2 parts", false)]
    public void An_issue_number_is_told_from_a_colour(string text, bool found) => Assert.Equal(found, IssueNumber().IsMatch(text));

    private static IEnumerable<string> Found(IEnumerable<string> files, Regex words) =>
        from file in files
        let text = Repository.Read(file)
        from match in words.Matches(text)
        select $"{file}, line {text.AsSpan(0, match.Index).Count('\n') + 1}: {match.Value}";

    [GeneratedRegex(@"(?<![\w.])/(work|tmp|root|home/\w+)/|[A-Z]:\\Users\\", RegexOptions.ExplicitCapture, 10_000)]
    private static partial Regex MachinePath();

    [GeneratedRegex(@"\b[Ss]essions?\b|\btranscripts?\b|\bseed documents?\b", RegexOptions.ExplicitCapture, 10_000)]
    private static partial Regex Making();

    [GeneratedRegex(@"\.\./shared\b", RegexOptions.ExplicitCapture, 10_000)]
    private static partial Regex BesideTheRepository();

    [GeneratedRegex(@"\b[Ii]ssues?\s+#?\d+|(?<=[\s(])#\d{1,4}(?=[\s,:)]|\.(\s|$)|$)", RegexOptions.ExplicitCapture | RegexOptions.Multiline, 10_000)]
    private static partial Regex IssueNumber();
}
