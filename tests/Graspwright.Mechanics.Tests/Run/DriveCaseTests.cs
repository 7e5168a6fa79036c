using Graspwright.Mechanics.Run;

namespace Graspwright.Mechanics.Tests.Run;

/// <summary>
/// Our solver beside an independent program made from the same model: every case of a folder, with no code for any single
/// case. The folder is the repository's own copies, or the one named by GRASPWRIGHT_DRIVE_CASES.
/// </summary>
public sealed class DriveCaseTests
{
    public static TheoryData<string> Cases()
    {
        string folder = Environment.GetEnvironmentVariable("GRASPWRIGHT_DRIVE_CASES") is { Length: > 0 } named
            ? named
            : Path.Combine(AppContext.BaseDirectory, "Run", "Cases");
        return [.. Directory.GetFiles(folder, "*.json").Order(StringComparer.Ordinal)];
    }

    [Theory]
    [MemberData(nameof(Cases))]
    public void Agrees_with_the_independent_program(string path)
    {
        DriveCase c = DriveCase.Read(path);
        RunResult run = ClosingRun.Solve(c.Drive, c.Held, c.Options);
        DriveCaseComparison comparison = DriveCaseComparison.Of(c, run);
        Assert.True(comparison.Compared > 100, $"only {comparison.Compared} numbers were compared");
        Assert.True(comparison.Differences.Count == 0, $"{c.Name}: {comparison.Differences.Count} differences of {comparison.Compared} comparisons\n" + string.Join('\n', comparison.Differences.Take(40)));
    }
}
