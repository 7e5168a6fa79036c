using Graspwright.Workshop.Mould;
using Graspwright.Workshop.Results;

namespace Graspwright.Cli.Live;

/// <summary>The file in which a live clock is kept, so that it goes on after a crash. Written whole or not at all.</summary>
/// <param name="path">Path of the file.</param>
internal sealed class ClockState(string path)
{
    /// <summary>Path of the file.</summary>
    public string Path => path;

    /// <summary>Reads the run.</summary>
    /// <returns><see langword="null"/> if there is none.</returns>
    /// <exception cref="BadInputException">The file is not one of ours.</exception>
    public ClockRun? Read()
    {
        if (!File.Exists(path))
        {
            return null;
        }

        (ClockRun? run, InputError? error) = ClockRunText.Read(Text(), path);
        return error is null ? run : throw new BadInputException(error);
    }

    /// <summary>Writes the run.</summary>
    /// <param name="run">The run.</param>
    public void Write(ClockRun run) => WholeFile.Write(path, ClockRunText.Write(run), "--state");

    /// <summary>Forgets the run.</summary>
    public void Delete() => File.Delete(path);

    private string Text()
    {
        try
        {
            return File.ReadAllText(path);
        }
        catch (Exception refusal) when (refusal is IOException or UnauthorizedAccessException)
        {
            throw new BadInputException(ClockRunText.Fault(path, refusal.Message));
        }
    }
}
