using System.Globalization;
using Graspwright.Strength.Lives;

namespace Graspwright.Strength.Tests.Lives;

/// <summary>Published lives. Those written out here are in the public domain or mere numbers of a paper; the others are read beside the repository where they lie.</summary>
internal static class PublishedLives
{
    /// <summary>NIST/SEMATECH e-Handbook, section 8.4.1.3 (public domain): ten breaks [h], ten still whole at 500 h.</summary>
    public static IReadOnlyList<LifeRecord> Handbook { get; } =
        [.. ((double[])[54, 187, 216, 240, 244, 335, 361, 373, 375, 386]).Select(t => LifeRecord.BrokeAt(t)), LifeRecord.WholeAt(500, 10)];

    /// <summary>Ball bearings, Lieblein and Zelen 1956, Journal of Research of the National Bureau of Standards (public domain): 10⁶ turns.</summary>
    public static IReadOnlyList<LifeRecord> BallBearings { get; } =
    [
        .. ((double[])[17.88, 28.92, 33.00, 41.52, 42.12, 45.60, 48.48, 51.84, 51.96, 54.12, 55.56, 67.80, 68.64, 68.64, 68.88, 84.12, 93.12, 98.64, 105.12, 105.84, 127.92, 128.04, 173.40])
            .Select(t => LifeRecord.BrokeAt(t)),
    ];

    /// <summary>Weeks of remission, maintained and not, as printed by Miller 1981 (+ = still whole).</summary>
    public static IReadOnlyList<LifeRecord> Maintained { get; } = Plus("9 13 13+ 18 23 28+ 31 34 45+ 48 161+");

    public static IReadOnlyList<LifeRecord> NotMaintained { get; } = Plus("5 5 8 8 12 16+ 23 27 30 33 43 45");

    public static IReadOnlyList<LifeRecord> Plus(string text) =>
        [.. text.Split(' ').Select(t => t.EndsWith('+') ? LifeRecord.WholeAt(Number(t[..^1])) : LifeRecord.BrokeAt(Number(t)))];

    /// <summary>Lines of a file of open data that lies beside the repository; the test is skipped where it does not.</summary>
    public static string[][] Beside(string name)
    {
        DirectoryInfo? root = new(AppContext.BaseDirectory);
        while (root is not null && !File.Exists(Path.Combine(root.FullName, "Graspwright.slnx")))
        {
            root = root.Parent;
        }

        string file = Path.Combine(root?.FullName ?? "", "..", "shared", "data", "lives", name);
        Assert.SkipUnless(File.Exists(file), $"{name} does not lie beside the repository.");
        return [.. File.ReadLines(file).Skip(1).Select(line => line.Split(',').Select(c => c.Trim('"')).ToArray())];
    }

    public static double Number(string text) => double.Parse(text, CultureInfo.InvariantCulture);
}
