namespace Graspwright.Rules.Tests;

/// <summary>The repository's own files, without what building and testing leave behind.</summary>
internal static class Repository
{
    private static readonly string[] Made = ["bin", "obj", "out", "TestResults", ".git", ".vs"];

    private static readonly string[] TextEndings =
        [".cs", ".csproj", ".props", ".targets", ".slnx", ".json", ".md", ".toml", ".txt", ".svg", ".csv", ".py", ".editorconfig", ".gitignore", ""];

    /// <summary>Folder of the solution.</summary>
    public static string Root { get; } = FindRoot();

    /// <summary>Every file, as a path from the root with forward slashes, in order.</summary>
    public static IReadOnlyList<string> Files { get; } = [.. Walk(new(Root)).Order(StringComparer.Ordinal)];

    /// <summary>Every text file.</summary>
    public static IEnumerable<string> TextFiles => Files.Where(f => TextEndings.Contains(Path.GetExtension(f), StringComparer.Ordinal));

    /// <summary>Every C# file.</summary>
    public static IEnumerable<string> Sources => Files.Where(f => f.EndsWith(".cs", StringComparison.Ordinal));

    /// <summary>Every project file.</summary>
    public static IEnumerable<string> Projects => Files.Where(f => f.EndsWith(".csproj", StringComparison.Ordinal));

    /// <summary>Text of a file.</summary>
    public static string Read(string file) => File.ReadAllText(Path.Combine(Root, file));

    /// <summary>Lines of a list in <c>eng/</c>: what is not a comment and not empty.</summary>
    public static IReadOnlyList<string> ReadList(string file) =>
        [.. Read(file).Split('\n').Select(line => line.Split('#')[0].Trim()).Where(line => line.Length > 0)];

    private static IEnumerable<string> Walk(DirectoryInfo folder)
    {
        foreach (FileInfo file in folder.EnumerateFiles())
        {
            if (file.Name != ".git")
            {
                yield return Path.GetRelativePath(Root, file.FullName).Replace('\\', '/');
            }
        }

        foreach (DirectoryInfo inner in folder.EnumerateDirectories().Where(d => !Made.Contains(d.Name, StringComparer.Ordinal)))
        {
            foreach (string file in Walk(inner))
            {
                yield return file;
            }
        }
    }

    private static string FindRoot()
    {
        DirectoryInfo? folder = new(AppContext.BaseDirectory);
        while (folder is not null && !File.Exists(Path.Combine(folder.FullName, "Graspwright.slnx")))
        {
            folder = folder.Parent;
        }

        return folder?.FullName ?? throw new DirectoryNotFoundException("The solution's folder is not above the tests.");
    }
}
