namespace Graspwright.Hand;

/// <summary>What reading a hand file gave.</summary>
/// <param name="Hand">The hand; <see langword="null"/> if there are errors.</param>
/// <param name="Errors">All errors, in the order of the text.</param>
/// <param name="Source">The text with its syntax; <see langword="null"/> if it is not TOML.</param>
public sealed record HandReading(HandModel? Hand, IReadOnlyList<HandError> Errors, HandSource? Source);

/// <summary>Reads hand files.</summary>
public static class HandFile
{
    /// <summary>Reads a hand file. Whatever the file holds, the answer is a hand or errors.</summary>
    /// <param name="path">Path of the file.</param>
    public static HandReading Read(string path)
    {
        ArgumentException.ThrowIfNullOrEmpty(path);
        if (Directory.Exists(path))
        {
            return Failed(new(path, 0, 0, "", "a folder", "a hand file", "name the file in it, such as hand.toml"));
        }

        if (!File.Exists(path))
        {
            return Failed(new(path, 0, 0, "", "no such file", "a hand file", "check the name and the folder"));
        }

        try
        {
            return Parse(Bytes(path), path, Path.GetDirectoryName(Path.GetFullPath(path)));
        }
        catch (Exception refusal) when (refusal is IOException or UnauthorizedAccessException)
        {
            return Failed(new(path, 0, 0, "", $"a file that cannot be read: {refusal.Message}", "a file you may read", "check its permissions, and that no other program holds it"));
        }
    }

    /// <summary>Reads a hand from the bytes of a file.</summary>
    /// <param name="bytes">The bytes.</param>
    /// <param name="name">Name for messages.</param>
    /// <param name="folder">Folder in which named files must lie; <see langword="null"/> = links are not followed.</param>
    public static HandReading Parse(ReadOnlySpan<byte> bytes, string name, string? folder = null)
    {
        (HandText? text, HandError? error) = HandText.Decode(bytes, name);
        return text is null ? Failed(error!) : Parse(text, folder);
    }

    /// <summary>Reads a hand from text.</summary>
    /// <param name="text">The text.</param>
    /// <param name="name">Name for messages.</param>
    /// <param name="folder">Folder in which named files must lie; <see langword="null"/> = links are not followed.</param>
    public static HandReading Parse(string text, string name, string? folder = null) => Parse(new HandText(name, text, HasByteOrderMark: false), folder);

    /// <summary>Reads a hand from decoded text.</summary>
    /// <param name="text">The text.</param>
    /// <param name="folder">Folder in which named files must lie; <see langword="null"/> = links are not followed.</param>
    public static HandReading Parse(HandText text, string? folder)
    {
        ArgumentNullException.ThrowIfNull(text);
        (HandSource? source, IReadOnlyList<HandError> errors) = HandSource.Parse(text);
        if (source is null)
        {
            return new(null, errors, null);
        }

        Faults faults = new(text.Name);
        new KeyCheck(faults, folder).Check(source.Root, HandKeys.Root, "");
        HandModel hand = HandBinding.Bind(source, faults);
        return new(faults.Any ? null : hand, faults.Sorted(), source);
    }

    /// <summary>The bytes of a file, one more than is read at most: devices have no length and no end.</summary>
    private static byte[] Bytes(string path)
    {
        using FileStream file = File.OpenRead(path);
        byte[] bytes = new byte[file.CanSeek && file.Length is > 0 and <= HandText.GreatestBytes ? file.Length : HandText.GreatestBytes + 1];
        int got = file.ReadAtLeast(bytes, bytes.Length, throwOnEndOfStream: false);
        return bytes[..got];
    }

    private static HandReading Failed(HandError error) => new(null, [error], null);
}
