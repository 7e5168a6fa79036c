using System.Runtime.InteropServices;

namespace Graspwright.Cli;

/// <summary>Ends the program cleanly when the user stops it: no half-written file stays behind.</summary>
internal static class Interruption
{
    private static volatile string? s_unfinished;
    private static Action? s_finish;
    private static readonly List<PosixSignalRegistration> s_registrations = []; // they end when they are collected

    /// <summary>File being written under its temporary name; <see langword="null"/> = none.</summary>
    public static string? Unfinished
    {
        get => s_unfinished;
        set => s_unfinished = value;
    }

    /// <summary>What is said when the user stops.</summary>
    public static string Farewell { get; set; } = "Stopped. Nothing was left half-written.";

    /// <summary>What ends the work in hand by itself, keeping what it has; <see langword="null"/> = the program ends at once, as it does when it is stopped a second time.</summary>
    public static Action? Finish
    {
        get => Volatile.Read(ref s_finish);
        set => Volatile.Write(ref s_finish, value);
    }

    /// <summary>Listens for the user's stop, and for being ended from outside: a closed terminal, a shutdown.</summary>
    /// <remarks>
    /// A shell without job control starts what it puts in the background deaf to Ctrl-C, and that is kept as it is wished
    /// so; such a program is stopped by SIGTERM, which therefore must end it as cleanly.
    /// </remarks>
    /// <param name="terminal">Where to say so.</param>
    public static void Listen(Terminal terminal)
    {
        foreach (PosixSignal signal in (ReadOnlySpan<PosixSignal>)[PosixSignal.SIGINT, PosixSignal.SIGTERM, PosixSignal.SIGHUP])
        {
            s_registrations.Add(PosixSignalRegistration.Create(signal, context =>
            {
                context.Cancel = true;
                Stop(terminal);
            }));
        }
    }

    private static void Stop(Terminal terminal)
    {
        if (Interlocked.Exchange(ref s_finish, null) is { } finish)
        {
            finish();
            return;
        }

        if (Unfinished is { } file)
        {
            File.Delete(file);
        }

        terminal.Talk.WriteLine(Farewell);
        Environment.Exit(ExitCode.Stopped);
    }
}
