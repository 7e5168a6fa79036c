namespace Graspwright.Rules.Tests;

/// <summary>Where files lie and how long they are.</summary>
public sealed class LayoutTests
{
    private const int LongestFile = 400;
    private const int ShortAgain = 300; // a file below this needs its reason no more
    private const int LongestReadme = 30;

    [Fact]
    public void Every_project_of_src_has_its_tests() => Rule.Holds(
        from project in Folders("src")
        where !Folders("tests").Contains(project + ".Tests", StringComparer.Ordinal)
        select project);

    [Fact]
    public void Folders_of_tests_mirror_those_of_src()
    {
        HashSet<string> source = [.. Repository.Sources.Where(f => f.StartsWith("src/", StringComparison.Ordinal)).SelectMany(Above)];
        Rule.Holds(
            from file in Repository.Sources
            where file.StartsWith("tests/", StringComparison.Ordinal)
            let folder = Path.GetDirectoryName(file)!.Replace('\\', '/')
            let mirrored = folder.Replace("tests/", "src/", StringComparison.Ordinal).Replace(".Tests", "", StringComparison.Ordinal)
            where folder.Count(c => c == '/') > 1 && !source.Contains(mirrored)
            select $"{file}: there is no {mirrored}");
    }

    [Fact]
    public void Every_test_project_holds_a_test() => Rule.Holds(
        from project in Folders("tests")
        where !Repository.Sources.Any(f => f.StartsWith($"tests/{project}/", StringComparison.Ordinal) && HasTest(Repository.Read(f)))
        select project);

    [Fact]
    public void No_source_file_is_long_without_a_reason()
    {
        Dictionary<string, string> reasons = Repository.Read("eng/long-files.txt").Split('\n')
            .Where(line => line.Length > 0 && line[0] != '#')
            .Select(line => line.Split('#', 2))
            .ToDictionary(parts => parts[0].Trim(), parts => parts.Length > 1 ? parts[1].Trim() : "", StringComparer.Ordinal);
        Rule.Holds(Longer(LongestFile).Except(reasons.Keys, StringComparer.Ordinal));
        Rule.Holds(reasons.Keys.Except(Longer(ShortAgain), StringComparer.Ordinal));
        Rule.Holds(reasons.Where(r => r.Value.Length < 20).Select(r => r.Key));
    }

    [Fact]
    public void Every_project_has_a_short_readme() => Rule.Holds(
        from top in (string[])["src", "tests", "benchmarks"]
        from project in Folders(top)
        let readme = $"{top}/{project}/README.md"
        let lines = Repository.Files.Contains(readme) ? Repository.Read(readme).TrimEnd().Split('\n').Length : 0
        where lines is 0 or > LongestReadme
        select $"{readme}: {lines} lines");

    private static IReadOnlyList<string> Folders(string top) =>
        [.. Repository.Files.Select(f => f.Split('/')).Where(p => p.Length > 2 && p[0] == top).Select(p => p[1]).Distinct(StringComparer.Ordinal)];

    private static IEnumerable<string> Longer(int lines) => Repository.Sources.Where(f => Repository.Read(f).Count(c => c == '\n') > lines);

    private static bool HasTest(string text) => text.Contains("[Fact]", StringComparison.Ordinal) || text.Contains("[Theory]", StringComparison.Ordinal);

    private static IEnumerable<string> Above(string file)
    {
        for (string? folder = Path.GetDirectoryName(file); !string.IsNullOrEmpty(folder); folder = Path.GetDirectoryName(folder))
        {
            yield return folder.Replace('\\', '/');
        }
    }
}
