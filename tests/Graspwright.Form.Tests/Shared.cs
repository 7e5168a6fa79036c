namespace Graspwright.Form.Tests;

/// <summary>Data from outside, beside the repository, where it is there.</summary>
internal static class Shared
{
    /// <summary>Path of a file; <see langword="null"/> = it is not here.</summary>
    public static string? File(params string[] parts)
    {
        for (DirectoryInfo? at = new(AppContext.BaseDirectory); at is not null; at = at.Parent)
        {
            string path = Path.Combine([at.FullName, "shared", .. parts]);
            if (System.IO.File.Exists(path))
            {
                return path;
            }
        }

        return null;
    }
}
