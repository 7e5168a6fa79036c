using System.Xml.Linq;

namespace Graspwright.Rules.Tests;

/// <summary>What each project may use is written in <c>eng/dependencies.txt</c>, and nowhere else.</summary>
public sealed class DependencyTests
{
    private static readonly Dictionary<string, string[]> Allowed = Repository.ReadList("eng/dependencies.txt")
        .Select(line => line.Split(':', 2))
        .ToDictionary(parts => parts[0].Trim(), parts => parts[1].Split(' ', StringSplitOptions.RemoveEmptyEntries), StringComparer.Ordinal);

    [Fact]
    public void Every_project_is_listed_and_every_listed_project_is_there() =>
        Assert.Equal(Repository.Projects.Select(Name).Order(StringComparer.Ordinal), Allowed.Keys.Order(StringComparer.Ordinal));

    [Fact]
    public void A_project_uses_only_what_its_line_allows() => Rule.Holds(
        from project in Repository.Projects
        let allowed = Allowed.GetValueOrDefault(Name(project), [])
        from used in References(project)
        where !allowed.Contains(used, StringComparer.Ordinal)
        select $"{Name(project)} uses {used}");

    [Fact]
    public void A_line_allows_nothing_that_does_not_exist()
    {
        HashSet<string> known = [.. Allowed.Keys, .. Packages()];
        Rule.Holds(from line in Allowed from used in line.Value where !known.Contains(used) select $"{line.Key} may use {used}, which is neither a project nor a package");
    }

    [Fact]
    public void Every_project_is_in_the_solution() => Assert.Equal(
        Repository.Projects,
        XDocument.Parse(Repository.Read("Graspwright.slnx")).Descendants("Project").Select(p => p.Attribute("Path")!.Value).Order(StringComparer.Ordinal));

    private static string Name(string project) => Path.GetFileNameWithoutExtension(project);

    private static IEnumerable<string> Packages() =>
        XDocument.Parse(Repository.Read("Directory.Packages.props")).Descendants("PackageVersion").Select(p => p.Attribute("Include")!.Value)
            .Concat(Repository.Projects.SelectMany(Downloads));

    private static IEnumerable<string> References(string project)
    {
        XDocument xml = XDocument.Parse(Repository.Read(project));
        return xml.Descendants("ProjectReference").Select(r => Path.GetFileNameWithoutExtension(r.Attribute("Include")!.Value.Replace('\\', '/')))
            .Concat(xml.Descendants("PackageReference").Select(r => r.Attribute("Include")!.Value))
            .Concat(Downloads(project));
    }

    // What is fetched for the build alone stands in the project or in a file that it imports from its own folder.
    private static IEnumerable<string> Downloads(string project) =>
        from import in XDocument.Parse(Repository.Read(project)).Descendants("Import").Select(i => i.Attribute("Project")!.Value)
        from package in XDocument.Parse(Repository.Read($"{Path.GetDirectoryName(project)}/{import}")).Descendants("PackageDownload")
        select package.Attribute("Include")!.Value;
}
