using Graspwright.Mechanics.Tests.Run;

namespace Graspwright.Benchmarks;

/// <summary>Where the things to be measured lie.</summary>
internal static class Repository
{
    /// <summary>Folder that holds the solution.</summary>
    public static string Root { get; } = FindRoot();

    /// <summary>Path of a reference case.</summary>
    /// <param name="start">First letters of its name.</param>
    public static string CaseFile(string start) =>
        Directory.GetFiles(Path.Combine(AppContext.BaseDirectory, "Cases"), start + "_*.json").Single();

    /// <summary>A reference case.</summary>
    /// <param name="start">First letters of its name.</param>
    public static DriveCase Case(string start) => DriveCase.Read(CaseFile(start));

    private static string FindRoot()
    {
        for (DirectoryInfo? folder = new(AppContext.BaseDirectory); folder is not null; folder = folder.Parent)
        {
            if (File.Exists(Path.Combine(folder.FullName, "Graspwright.slnx")))
            {
                return folder.FullName;
            }
        }

        throw new InvalidOperationException("Graspwright.slnx is in none of the folders above this program: run it from the repository.");
    }
}
