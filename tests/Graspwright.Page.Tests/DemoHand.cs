namespace Graspwright.Page.Tests;

/// <summary>A copy of the demo hand in a folder of its own, removed afterwards.</summary>
internal sealed class DemoHand : IDisposable
{
    private readonly string _top = Directory.CreateTempSubdirectory("graspwright-page-").FullName;

    public DemoHand()
    {
        DirectoryInfo demo = new(Path.Combine(Repository(), "examples", "boatyard"));
        foreach (FileInfo file in demo.EnumerateFiles("*", SearchOption.AllDirectories))
        {
            string to = Path.Combine(Folder, Path.GetRelativePath(demo.FullName, file.FullName));
            Directory.CreateDirectory(Path.GetDirectoryName(to)!);
            file.CopyTo(to);
        }
    }

    public string Folder => Path.Combine(_top, "hand");

    public string File => Path.Combine(Folder, "hand.toml");

    public string Text
    {
        get => System.IO.File.ReadAllText(File);
        set => System.IO.File.WriteAllText(File, value);
    }

    public void Dispose() => Directory.Delete(_top, recursive: true);

    private static string Repository()
    {
        DirectoryInfo? folder = new(AppContext.BaseDirectory);
        while (folder is not null && !System.IO.File.Exists(Path.Combine(folder.FullName, "Graspwright.slnx")))
        {
            folder = folder.Parent;
        }

        return folder?.FullName ?? throw new DirectoryNotFoundException("The solution's folder is not above the tests.");
    }
}
