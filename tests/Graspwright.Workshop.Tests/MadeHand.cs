using Graspwright.Hand;

namespace Graspwright.Workshop.Tests;

/// <summary>The boatyard hand, read from its file.</summary>
internal static class MadeHand
{
    public static string File { get; } = Path.Combine(Root(), "examples", "boatyard", "hand.toml");

    public static HandReading Read()
    {
        HandReading reading = HandFile.Read(File);
        Assert.Empty(reading.Errors);
        return reading;
    }

    public static HandModel Boatyard() => Read().Hand!;

    private static string Root()
    {
        DirectoryInfo? folder = new(AppContext.BaseDirectory);
        while (folder is not null && !System.IO.File.Exists(Path.Combine(folder.FullName, "Graspwright.slnx")))
        {
            folder = folder.Parent;
        }

        return folder?.FullName ?? throw new DirectoryNotFoundException("The solution's folder is not above the tests.");
    }
}
