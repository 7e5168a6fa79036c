using System.Runtime.InteropServices;
using Microsoft.Win32.SafeHandles;

namespace Graspwright.Cli.Tests;

/// <summary>A pseudo-terminal: what is written to its master end comes out of a port that a program opens by name.</summary>
internal sealed class PseudoTerminal : IDisposable
{
    private const int ReadWriteNoControl = 0x80102; // O_RDWR, O_NOCTTY and O_CLOEXEC on Linux: a program that is started must not hold the master end
    public const int CtrlC = 2, Ended = 15; // SIGINT, SIGTERM
    private readonly FileStream _master;

    private PseudoTerminal(FileStream master, string port) => (_master, Port) = (master, port);

    public string Port { get; }

    public static PseudoTerminal? Open()
    {
        if (!OperatingSystem.IsLinux())
        {
            return null;
        }

        int handle = OpenMaster(ReadWriteNoControl);
        if (handle < 0 || Grant(handle) != 0 || Unlock(handle) != 0)
        {
            return null;
        }

        byte[] name = new byte[128];
        return Name(handle, name, name.Length) == 0
            ? new(new FileStream(new SafeFileHandle(handle, ownsHandle: true), FileAccess.Write, 0), System.Text.Encoding.ASCII.GetString(name.AsSpan(0, name.AsSpan().IndexOf((byte)0))))
            : null;
    }

    public void Write(ReadOnlySpan<byte> bytes) => _master.Write(bytes);

    /// <summary>Pulls the plug.</summary>
    public void Dispose() => _master.Dispose();

    public static void Signal(int process, int signal) => Assert.Equal(0, Kill(process, signal));

    /// <summary>Whether this process, and so what it starts, is deaf to a signal (SigIgn in Linux's list of a process).</summary>
    public static bool Ignores(int signal) =>
        File.ReadLines("/proc/self/status").FirstOrDefault(l => l.StartsWith("SigIgn:", StringComparison.Ordinal)) is { } line
        && (Convert.ToUInt64(line[7..].Trim(), 16) >> (signal - 1) & 1) != 0;

    [DllImport("libc", EntryPoint = "posix_openpt")]
    private static extern int OpenMaster(int flags);

    [DllImport("libc", EntryPoint = "grantpt")]
    private static extern int Grant(int handle);

    [DllImport("libc", EntryPoint = "unlockpt")]
    private static extern int Unlock(int handle);

    [DllImport("libc", EntryPoint = "ptsname_r")]
    private static extern int Name(int handle, byte[] name, nint length);

    [DllImport("libc", EntryPoint = "kill")]
    private static extern int Kill(int process, int signal);
}
