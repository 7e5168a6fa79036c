namespace Graspwright.Cli.Tests;

/// <summary>A folder of a test's own, gone after it.</summary>
internal sealed class Folder : IDisposable
{
    private readonly DirectoryInfo _folder = Directory.CreateTempSubdirectory("graspwright");

    public string this[string name] => Path.Combine(_folder.FullName, name);

    public IEnumerable<string> Names => _folder.EnumerateFileSystemInfos().Select(f => f.Name).Order(StringComparer.Ordinal);

    public string Write(string name, string text)
    {
        File.WriteAllText(this[name], text);
        return this[name];
    }

    /// <summary>The demo hand with one part of its text replaced.</summary>
    public string Changed(string old, string replacement)
    {
        string text = File.ReadAllText(Started.Demo);
        Assert.Contains(old, text, StringComparison.Ordinal);
        return Write("hand.toml", text.Replace(old, replacement, StringComparison.Ordinal));
    }

    public void Dispose() => _folder.Delete(recursive: true);
}
