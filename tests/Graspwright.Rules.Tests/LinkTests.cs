using System.Text.RegularExpressions;

namespace Graspwright.Rules.Tests;

/// <summary>Links between documents lead somewhere.</summary>
public sealed partial class LinkTests
{
    private static IEnumerable<string> Documents => Repository.Files.Where(f => f.EndsWith(".md", StringComparison.Ordinal));

    [Fact]
    public void Every_link_inside_the_repository_leads_to_a_file_and_a_heading() => Rule.Holds(
        from document in Documents
        from match in Link().Matches(WithoutCode(Repository.Read(document)))
        let target = match.Groups["target"].Value
        where !target.Contains("://", StringComparison.Ordinal) && !Resolves(document, target)
        select $"{document}: {target}");

    [Fact]
    public void Every_document_is_reached_from_the_readme()
    {
        HashSet<string> reached = new(StringComparer.Ordinal) { "README.md" };
        Queue<string> open = new(reached);
        while (open.TryDequeue(out string? document))
        {
            IEnumerable<string> targets = Link().Matches(WithoutCode(Repository.Read(document))).Select(m => From(document, m.Groups["target"].Value.Split('#')[0]));
            foreach (string target in targets.Where(t => t.EndsWith(".md", StringComparison.Ordinal) && Repository.Files.Contains(t) && reached.Add(t)))
            {
                open.Enqueue(target);
            }
        }

        Rule.Holds(Documents.Where(d => d.StartsWith("docs/", StringComparison.Ordinal)).Except(reached, StringComparer.Ordinal));
    }

    [Fact]
    public void Every_file_that_a_projects_readme_names_is_there() => Rule.Holds(
        from document in Documents
        where document.Count(c => c == '/') == 2 && document.EndsWith("/README.md", StringComparison.Ordinal)
        from match in NamedFile().Matches(Repository.Read(document))
        let name = match.Groups["name"].Value
        where !Repository.Files.Contains(name) && !Repository.Files.Contains(From(document, name))
        select $"{document}: {name}");

    private static bool Resolves(string document, string target)
    {
        string[] parts = target.Split('#', 2);
        string file = parts[0].Length == 0 ? document : From(document, parts[0]);
        bool there = Repository.Files.Contains(file) || Repository.Files.Any(f => f.StartsWith(file.TrimEnd('/') + "/", StringComparison.Ordinal));
        return there && (parts.Length == 1 || Headings(Repository.Read(file)).Contains(parts[1], StringComparer.Ordinal));
    }

    private static string From(string document, string target) =>
        Path.GetRelativePath(Repository.Root, Path.Combine(Repository.Root, Path.GetDirectoryName(document)!, target)).Replace('\\', '/');

    private static IEnumerable<string> Headings(string text) =>
        Heading().Matches(text).Select(m => NotInAnchor().Replace(m.Groups["words"].Value.Trim().ToLowerInvariant(), "").Replace(' ', '-'));

    private static string WithoutCode(string text) => Code().Replace(text, "");

    [GeneratedRegex(@"\]\((?<target>[^)\s]+)\)", RegexOptions.ExplicitCapture, 10_000)]
    private static partial Regex Link();

    [GeneratedRegex(@"`(?<name>[\w./]+\.(cs|md|txt|slnx))`", RegexOptions.ExplicitCapture, 10_000)]
    private static partial Regex NamedFile();

    [GeneratedRegex(@"^#+ (?<words>.*)$", RegexOptions.ExplicitCapture | RegexOptions.Multiline, 10_000)]
    private static partial Regex Heading();

    [GeneratedRegex(@"[^\p{L}\p{N} _-]", RegexOptions.ExplicitCapture, 10_000)]
    private static partial Regex NotInAnchor();

    [GeneratedRegex(@"^```.*?^```|`[^`\n]*`", RegexOptions.ExplicitCapture | RegexOptions.Multiline | RegexOptions.Singleline, 10_000)]
    private static partial Regex Code();
}
