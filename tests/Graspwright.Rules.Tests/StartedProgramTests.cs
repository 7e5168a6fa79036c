using System.Text.RegularExpressions;

namespace Graspwright.Rules.Tests;

/// <summary>Every program that code or tests start comes with the SDK, with any POSIX system, or with a package of <c>eng/apt.txt</c>.</summary>
/// <remarks>
/// Read from the source text: a program is a literal or a constant of the same file, given to <c>Process.Start</c>,
/// <c>ProcessStartInfo</c>, or to a method of the same project whose first parameter is <c>string program</c>.
/// </remarks>
public sealed partial class StartedProgramTests
{
    private static readonly string[] AlwaysThere = ["dotnet", "/bin/sh"];

    // Program → the package of eng/apt.txt that brings it, itself or as a dependency.
    private static readonly Dictionary<string, string> Provider = new(StringComparer.Ordinal)
    {
        ["/usr/bin/python3"] = "python3-ezdxf",
        ["/usr/bin/pdftoppm"] = "poppler-utils",
    };

    [Fact]
    public void Every_started_program_is_provided_for()
    {
        IReadOnlyList<string> packages = Repository.ReadList("eng/apt.txt");
        Rule.Holds(
            from started in Repository.Sources.GroupBy(ProjectOf).SelectMany(Started)
            where !AlwaysThere.Contains(started.Program, StringComparer.Ordinal)
            where !(Provider.TryGetValue(started.Program, out string? package) && packages.Contains(package, StringComparer.Ordinal))
            select $"{started.File} starts {started.Program}");
    }

    [Fact]
    public void The_reading_of_sources_finds_literals_constants_and_what_is_neither()
    {
        (string, string)[] project =
        [
            ("a.cs", """void Run(string program) => Process.Start(new ProcessStartInfo(program)); const string tool = "lathe"; void A() => Run(tool);"""),
            ("b.cs", """void B() { A.Run("mill"); ProcessStartInfo x = new("drill"); Process.Start(Path.Combine(folder, name)); }"""),
            ("c.cs", """void C() => Run("not asked");"""),
        ];
        Assert.Equal(["drill", "lathe", "mill", "not asked", "words that cannot be read: Path.Combine"],
            Programs(project).Select(p => p.Program).Order(StringComparer.Ordinal));
        Assert.Empty(Programs([project[2]])); // Run is no starter in a project that starts nothing
    }

    private static string ProjectOf(string file) => string.Join('/', file.Split('/').Take(2));

    private static IEnumerable<(string File, string Program)> Started(IGrouping<string, string> project) =>
        project.Key.EndsWith("Graspwright.Rules.Tests", StringComparison.Ordinal) ? [] : Programs([.. project.Select(f => (f, Repository.Read(f)))]);

    private static IEnumerable<(string File, string Program)> Programs((string File, string Text)[] project)
    {
        if (!project.Any(p => Starting().IsMatch(p.Text)))
        {
            return [];
        }

        string[] through = [.. project.SelectMany(p => Passing().Matches(p.Text)).Select(m => m.Groups["name"].Value).Distinct(StringComparer.Ordinal)];
        string starter = string.Join('|', (string[])[@"Process\.Start", @"new\s+ProcessStartInfo", @"ProcessStartInfo\s+\w+\s*=\s*new", .. through.Select(t => $@"\b{Regex.Escape(t)}")]);
        Regex call = new($@"(?:{starter})\((?<first>""[^""]*""|[\w.]+)", RegexOptions.ExplicitCapture, Limit);
        return from source in project
               from match in call.Matches(source.Text)
               let program = Resolve(match.Groups["first"].Value, source.Text)
               where program is not null
               select (source.File, program);
    }

    private static string? Resolve(string first, string text)
    {
        if (first[0] == '"')
        {
            return first.Trim('"');
        }

        if (Regex.Match(text, $@"const\s+string\s+{Regex.Escape(first)}\s*=\s*""(?<value>[^""]*)""", RegexOptions.ExplicitCapture, Limit) is { Success: true } constant)
        {
            return constant.Groups["value"].Value;
        }

        // A declaration, a start information made before, and a program passed on are read where they come from.
        bool passedOn = first is "string" or "program" or "new" || Regex.IsMatch(text, $@"ProcessStartInfo\s+{Regex.Escape(first)}\b", RegexOptions.ExplicitCapture, Limit);
        return passedOn ? null : $"words that cannot be read: {first}";
    }

    private static readonly TimeSpan Limit = TimeSpan.FromSeconds(10);

    [GeneratedRegex(@"\bProcess\.Start\(|\bProcessStartInfo\b", RegexOptions.ExplicitCapture, 10_000)]
    private static partial Regex Starting();

    [GeneratedRegex(@"\b(?<name>\w+)\(string program\b", RegexOptions.ExplicitCapture, 10_000)]
    private static partial Regex Passing();
}
