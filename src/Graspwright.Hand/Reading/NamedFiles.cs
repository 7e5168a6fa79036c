namespace Graspwright.Hand;

/// <summary>Keeps the files that a hand file names inside its folder.</summary>
public static class NamedFiles
{
    /// <summary>What is wrong with the name of a file.</summary>
    /// <param name="name">The name as written.</param>
    /// <param name="folder">Folder of the hand file; <see langword="null"/> = not stored, links are not followed.</param>
    /// <returns>The likely fix; <see langword="null"/> if nothing is wrong. A file that does not exist is not wrong here.</returns>
    public static string? Fault(string name, string? folder)
    {
        ArgumentNullException.ThrowIfNull(name);
        string plain = name.Replace('\\', '/');
        if (plain.Trim().Length == 0 || plain.Any(char.IsControl))
        {
            return "write the name of a file";
        }

        if (plain.StartsWith('/') || Path.IsPathRooted(name) || (plain.Length > 1 && plain[1] == ':'))
        {
            return "write the name relative to the hand file, without a leading / or drive";
        }

        if (plain.Split('/').Contains("..", StringComparer.Ordinal))
        {
            return "copy the file into the folder of the hand file and write its name without ..";
        }

        return folder is not null && Escapes(plain, Path.GetFullPath(folder))
            ? "the name is a link that leads out of the folder: copy the file itself into it"
            : null;
    }

    /// <summary>Files that a hand file names and that are not there. Only the verbs that need one refuse; <c>check</c> tells of all.</summary>
    /// <param name="source">The hand file.</param>
    /// <param name="folder">Its folder.</param>
    public static IReadOnlyList<HandError> Missing(HandSource source, string folder)
    {
        ArgumentNullException.ThrowIfNull(source);
        ArgumentNullException.ThrowIfNull(folder);
        return [.. Named(source.Root, HandKeys.Root, "").Where(n => Fault(n.File.Text, null) is null && !File.Exists(Path.Combine(folder, n.File.Text.Replace('\\', '/'))))
            .Select(n => new HandError(source.Text.Name, n.File.Place.Line, n.File.Place.Column, n.Path,
                Directory.Exists(Path.Combine(folder, n.File.Text)) ? $"\"{n.File.Text}\", which is a folder" : $"\"{n.File.Text}\", which is not there", "a file inside the folder of the hand file", "put the file there, correct its name, or remove the line"))];
    }

    private static IEnumerable<(string Path, TextNode File)> Named(TableNode table, HandSection section, string path)
    {
        foreach (Entry entry in table.Entries)
        {
            string here = HandPath.Join(path, entry.Key);
            if (section.Find(entry.Key) is not { } key)
            {
                continue;
            }

            if (key.Form == KeyForm.FileName && entry.Value is TextNode file)
            {
                yield return (here, file);
            }
            else if (key.Parts is { } parts && entry.Value is TableNode below)
            {
                foreach ((string Path, TextNode File) named in Named(below, parts(), here))
                {
                    yield return named;
                }
            }
        }
    }

    private static bool Escapes(string name, string folder)
    {
        string root = Real(folder);
        string at = folder;
        foreach (string part in name.Split('/', StringSplitOptions.RemoveEmptyEntries))
        {
            at = Path.Combine(at, part);
            string real = Real(at);
            if (!string.Equals(real, root, StringComparison.Ordinal) && !real.StartsWith(root + Path.DirectorySeparatorChar, StringComparison.Ordinal))
            {
                return true;
            }
        }

        return false;
    }

    /// <summary>The place a path leads to once every link on the way is followed.</summary>
    private static string Real(string path)
    {
        string full = Path.GetFullPath(path);
        string at = Path.GetPathRoot(full)!;
        foreach (string part in full[at.Length..].Split(Path.DirectorySeparatorChar, StringSplitOptions.RemoveEmptyEntries))
        {
            at = Path.Combine(at, part);
            FileSystemInfo info = Directory.Exists(at) ? new DirectoryInfo(at) : new FileInfo(at);
            if (info.LinkTarget is not null && info.ResolveLinkTarget(returnFinalTarget: true) is { } target)
            {
                at = Real(target.FullName);
            }
        }

        return at;
    }
}
