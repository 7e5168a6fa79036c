using System.Runtime.InteropServices;
using System.Runtime.Versioning;

namespace Graspwright.Cli.Line;

/// <summary>A serial port or pseudo-terminal, opened raw: bytes come as they are, at a speed.</summary>
/// <remarks>Through the C library's terminal functions on Linux and macOS. Elsewhere the port is opened as it stands; set its speed beforehand.</remarks>
internal static class SerialLine
{
    private const int SettingsBytes = 256; // larger than any system's struct termios
    private const int Now = 0;

    /// <summary>Ports at which a board may hang: those that Linux and macOS name for boards at a USB plug. Elsewhere none is found; it is named by hand.</summary>
    public static IReadOnlyList<string> Names()
    {
        string[] patterns = OperatingSystem.IsLinux() ? ["ttyACM*", "ttyUSB*"] : OperatingSystem.IsMacOS() ? ["cu.usb*"] : [];
        return [.. patterns.SelectMany(p => Directory.EnumerateFileSystemEntries("/dev", p)).Order(StringComparer.Ordinal)];
    }

    /// <summary>Opens a port for reading.</summary>
    /// <param name="path">Path of the port.</param>
    /// <param name="speed">Bits a second.</param>
    /// <exception cref="IOException">It cannot be opened or set.</exception>
    public static FileStream Open(string path, uint speed)
    {
        FileStream port = new(path, new FileStreamOptions { Mode = FileMode.Open, Access = FileAccess.Read, Share = FileShare.ReadWrite, BufferSize = 0 });
        if (OperatingSystem.IsLinux() || OperatingSystem.IsMacOS())
        {
            try
            {
                Set(port, speed);
            }
            catch
            {
                port.Dispose();
                throw;
            }
        }

        return port;
    }

    [SupportedOSPlatform("linux")]
    [SupportedOSPlatform("macos")]
    private static void Set(FileStream port, uint speed)
    {
        byte[] settings = new byte[SettingsBytes];
        int handle = (int)port.SafeFileHandle.DangerousGetHandle();
        if (GetSettings(handle, settings) != 0)
        {
            return; // a pipe or a file, which has no speed
        }

        MakeRaw(settings);
        if (SetSpeed(settings, OperatingSystem.IsLinux() ? Code(speed) : speed) != 0 || SetSettings(handle, Now, settings) != 0)
        {
            throw new IOException($"{speed} bits a second cannot be set");
        }
    }

    /// <summary>Linux numbers its speeds (asm-generic/termbits.h, from memory; checked by a pseudo-terminal).</summary>
    private static uint Code(uint speed) => speed switch
    {
        9600 => 0xD,
        19200 => 0xE,
        38400 => 0xF,
        57600 => 0x1001,
        115200 => 0x1002,
        230400 => 0x1003,
        460800 => 0x1004,
        500000 => 0x1005,
        576000 => 0x1006,
        921600 => 0x1007,
        1000000 => 0x1008,
        1500000 => 0x100A,
        2000000 => 0x100B,
        3000000 => 0x100D,
        4000000 => 0x100F,
        _ => throw new IOException($"{speed} bits a second is no speed of this system"),
    };

    [DllImport("libc", EntryPoint = "tcgetattr")]
    [DefaultDllImportSearchPaths(DllImportSearchPath.SafeDirectories)]
    private static extern int GetSettings(int handle, byte[] settings);

    [DllImport("libc", EntryPoint = "tcsetattr")]
    [DefaultDllImportSearchPaths(DllImportSearchPath.SafeDirectories)]
    private static extern int SetSettings(int handle, int when, byte[] settings);

    [DllImport("libc", EntryPoint = "cfmakeraw")]
    [DefaultDllImportSearchPaths(DllImportSearchPath.SafeDirectories)]
    private static extern void MakeRaw(byte[] settings);

    [DllImport("libc", EntryPoint = "cfsetspeed")]
    [DefaultDllImportSearchPaths(DllImportSearchPath.SafeDirectories)]
    private static extern int SetSpeed(byte[] settings, uint speed);
}
