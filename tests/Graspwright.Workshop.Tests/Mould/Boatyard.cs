using Graspwright.Hand;

namespace Graspwright.Workshop.Tests.Mould;

/// <summary>The demo hand, as it is and changed.</summary>
internal static class Boatyard
{
    public static string Text { get; } = File.ReadAllText(Path.Combine(Root(), "examples", "boatyard", "hand.toml"));

    public static HandModel Hand { get; } = Changed();

    /// <summary>The demo hand with parts of its text replaced: old and new in turn.</summary>
    public static HandModel Changed(params string[] replacements)
    {
        string text = Text;
        for (int i = 0; i < replacements.Length; i += 2)
        {
            Assert.Contains(replacements[i], text, StringComparison.Ordinal);
            text = text.Replace(replacements[i], replacements[i + 1], StringComparison.Ordinal);
        }

        HandReading reading = HandFile.Parse(text, "hand.toml");
        Assert.Empty(reading.Errors);
        return reading.Hand!;
    }

    public static string Root()
    {
        DirectoryInfo? folder = new(AppContext.BaseDirectory);
        while (folder is not null && !File.Exists(Path.Combine(folder.FullName, "Graspwright.slnx")))
        {
            folder = folder.Parent;
        }

        return folder?.FullName ?? throw new DirectoryNotFoundException("The solution's folder is not above the tests.");
    }
}
