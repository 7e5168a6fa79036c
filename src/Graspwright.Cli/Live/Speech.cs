using System.ComponentModel;
using System.Diagnostics;
using Graspwright.Workshop.Results;

namespace Graspwright.Cli.Live;

/// <summary>Has a line spoken by a program that the user named; it gets the line as its only argument and is not waited for.</summary>
internal static class Speech
{
    /// <summary>Speaks a line.</summary>
    /// <param name="program">The program.</param>
    /// <param name="line">The line.</param>
    /// <exception cref="BadInputException">The program cannot be started.</exception>
    public static void SpeakThrough(string program, string line)
    {
        try
        {
            using Process? started = Process.Start(new ProcessStartInfo(program, [line]) { UseShellExecute = false, RedirectStandardOutput = true, RedirectStandardError = true });
        }
        catch (Exception refusal) when (refusal is Win32Exception or InvalidOperationException or FileNotFoundException)
        {
            throw new BadInputException(new InputError("command line", 0, 0, "--say", $"'{program}' cannot be started ({refusal.Message.TrimEnd('.')})", "a program that speaks the words it is given", "Try it by itself first, or leave --say out: the lines are printed and the bell rings."));
        }
    }
}
