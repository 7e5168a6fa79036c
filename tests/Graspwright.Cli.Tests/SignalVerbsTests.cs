using System.Diagnostics;
using System.Globalization;
using System.Text;
using System.Text.Json;

namespace Graspwright.Cli.Tests;

public sealed class SignalVerbsTests
{
    private static readonly string DemoFolder = Path.GetDirectoryName(Started.Demo)!;

    [Theory]
    [InlineData("contacts")]
    [InlineData("thresholds")]
    [InlineData("sites")]
    public void Answers_in_the_one_shape_with_cautions(string verb)
    {
        Started run = Started.Run(verb, Started.Demo, "--json");
        Assert.Equal((0, ""), (run.Code, run.Talk));
        using JsonDocument json = JsonDocument.Parse(run.Answers);
        Assert.Equal(["tool", "verb", "hand", "answer", "figures", "findings", "situations", "tables", "cautions"], json.RootElement.EnumerateObject().Select(p => p.Name));
        Assert.Contains("never while charging", json.RootElement.GetProperty("cautions").ToString(), StringComparison.Ordinal);
        Assert.Contains(json.RootElement.GetProperty("findings").EnumerateArray(), f => f.GetProperty("key").GetString() == "lock_unpowered" && f.GetProperty("verdict").GetString() == "not known");
    }

    [Fact]
    public void Says_that_a_contact_lifted_and_that_no_more_is_claimed_than_hours_allow()
    {
        Assert.Contains("hollow in 'morning': usable 89 % of the time, lifted off 1 time", Plain(Started.Run("contacts", Started.Demo).Answers), StringComparison.Ordinal);
        Assert.Contains("In 0.33 h of wear 0 false activations: fewer than 9 an hour may be claimed.", Plain(Started.Run("thresholds", Started.Demo).Answers), StringComparison.Ordinal);
    }

    [Fact]
    public void Writes_pictures_and_settings()
    {
        using Folder folder = new();
        Assert.Equal(0, Started.Run("sites", Started.Demo, "--svg", folder["pictures"]).Code);
        Assert.Equal(0, Started.Run("thresholds", Started.Demo, "--export", folder["settings.json"]).Code);
        Assert.Equal(0, Started.Run("thresholds", Started.Demo, "--export", folder["settings.h"]).Code);
        Assert.True(File.Exists(Path.Combine(folder["pictures"], "sites.svg")));
        using JsonDocument settings = JsonDocument.Parse(File.ReadAllText(folder["settings.json"]));
        Assert.Equal(4, settings.RootElement.GetProperty("channels").GetArrayLength());
        Assert.Contains("signal_levels[4][4]", File.ReadAllText(folder["settings.h"]), StringComparison.Ordinal);
        Assert.Equal(2, Started.Run("thresholds", Started.Demo, "--export", folder["settings.txt"]).Code);
    }

    [Theory]
    [InlineData("[signals.channels.ridge]", "[signals.channels.rigde]", "ridge")]
    [InlineData("file = \"signals/morning.edf\"", "file = \"signals/evening.edf\"", "not there")]
    [InlineData("file = \"signals/morning.edf\"", "file = \"signals/map.csv\"", "cannot be read")]
    public void Explains_recordings_that_do_not_fit(string old, string replacement, string words)
    {
        using Folder folder = new();
        Copy(folder);
        Started run = Started.Run("contacts", folder.Changed(old, replacement));
        Assert.Contains(words, run.Talk, StringComparison.Ordinal);
        Assert.DoesNotContain("   at ", run.Talk, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("contacts", "file = \"signals/morning.edf\"", "file = \"signals/mornin.edf\"", "signals.recordings.morning.file: the file mornin.edf is not there", "Did you mean morning.edf?")]
    [InlineData("contacts", "file = \"signals/noon.edf\"", "file = \"elsewhere/noon.edf\"", "signals.recordings.noon.file: the file noon.edf is not there", "Check its name and folder")]
    [InlineData("sites", "pattern = \"signals/pattern.csv\"", "pattern = \"signals/patern.csv\"", "signals.pattern: the file patern.csv is not there", "Did you mean pattern.csv?")]
    [InlineData("sites", "map = \"signals/map.csv\"", "map = \"signals/mapp.csv\"", "signals.map: the file mapp.csv is not there", "Did you mean map.csv?")]
    public void Says_on_which_line_of_the_hand_file_a_file_is_named_that_is_not_there(string verb, string old, string replacement, string words, string fix)
    {
        using Folder folder = new();
        Copy(folder);
        string hand = folder.Changed(old, replacement);
        int line = Array.FindIndex(File.ReadAllLines(hand), l => l.Contains(replacement, StringComparison.Ordinal)) + 1;
        string talk = Started.Run(verb, hand).Talk;
        Assert.Contains($"{hand}:{line}:", talk, StringComparison.Ordinal);
        Assert.Contains(words, talk, StringComparison.Ordinal);
        Assert.Contains(fix, talk, StringComparison.Ordinal);
    }

    [Fact]
    public void Takes_the_outline_of_the_pattern_from_a_drawing_and_explains_a_broken_one()
    {
        const string outline = "0\nSECTION\n2\nENTITIES\n0\nLINE\n8\n0\n10\n0\n20\n0\n11\n140\n21\n0\n0\nLINE\n8\n0\n10\n140\n20\n0\n11\n140\n21\n90\n0\nENDSEC\n0\nEOF\n";
        using Folder folder = new();
        Copy(folder);
        string hand = folder.Changed("pattern = \"signals/pattern.csv\"", "pattern = \"signals/pattern.dxf\"");
        File.WriteAllText(folder["signals/pattern.dxf"], outline);
        Started whole = Started.Run("sites", hand, "--svg", folder["whole"]);
        Assert.Equal((0, false), (whole.Code, whole.Talk.Contains("pattern", StringComparison.Ordinal)));
        File.WriteAllText(folder["signals/pattern.dxf"], outline.Replace("11\n140", "11\nx40", StringComparison.Ordinal));
        Started broken = Started.Run("sites", hand, "--svg", folder["broken"]);
        Assert.Contains("pattern.dxf:14:", broken.Talk, StringComparison.Ordinal);
        Assert.Contains("x40", broken.Talk, StringComparison.Ordinal);
        Assert.DoesNotContain("   at ", broken.Talk, StringComparison.Ordinal);
        File.WriteAllText(folder["signals/pattern.dxf"], outline.Replace("LINE\n", "SPLINE\n", StringComparison.Ordinal));
        Assert.Contains("no line in it, and 2 other things", Started.Run("sites", hand).Talk, StringComparison.Ordinal);
    }

    [Fact]
    public void Explains_a_hand_without_signals_and_a_recording_without_a_gesture()
    {
        using Folder folder = new();
        string bare = folder.Write("bare.toml", File.ReadAllText(Started.Demo).Split("[signals]", 2)[0]);
        foreach (string verb in (string[])["contacts", "thresholds", "sites", "listen"])
        {
            Started run = Started.Run(verb, bare);
            Assert.Equal((2, ""), (run.Code, run.Answers));
            Assert.Contains("signals", run.Talk, StringComparison.Ordinal);
        }

        Copy(folder);
        Started other = Started.Run("contacts", folder.Changed("gesture = \"turn\"", "gesture = \"wave\""));
        Assert.Equal(0, other.Code);
        Assert.Contains("wave was recorded fewer than two times", Plain(other.Answers), StringComparison.Ordinal);
    }

    [Fact]
    public void Listens_at_full_rate_to_half_lines_and_keeps_what_came_when_the_plug_is_pulled()
    {
        const int samples = 8000;
        using PseudoTerminal? port = PseudoTerminal.Open();
        Assert.SkipWhen(port is null, "No pseudo-terminal here.");
        using Folder folder = new();
        using Process listener = Listen(port!.Port, folder["taken.csv"]);
        Wait(listener, "Listening");
        StringBuilder text = new();
        for (int i = 0; i < samples; i++)
        {
            text.Append(CultureInfo.InvariantCulture, $"{i % 256},{i % 2000 - 1000},{i * 7 % 4001 - 2000},{-i % 500},{i * 13 % 997}\n");
        }

        byte[] bytes = Encoding.ASCII.GetBytes(text.ToString());
        for (int at = 0, piece = 1; at < bytes.Length; at += piece, piece = piece * 7 % 211 + 1)
        {
            port.Write(bytes.AsSpan(at, Math.Min(piece, bytes.Length - at))); // lines are cut anywhere
        }

        Wait(listener, $"{samples} samples, 0 lost, 0 unreadable");
        port.Dispose();
        listener.WaitForExit();
        Assert.Equal(0, listener.ExitCode);
        Assert.Contains("The port vanished", Plain(listener.StandardOutput.ReadToEnd()), StringComparison.Ordinal);
        string[] lines = File.ReadAllLines(folder["taken.csv"]);
        Assert.Equal(samples + 2, lines.Length);
        Assert.Equal("time_s,ridge [counts],hollow [counts],elbow [counts],rim [counts]", lines[0]);
        Assert.StartsWith("# ", lines[^1], StringComparison.Ordinal);
        Assert.All(Enumerable.Range(0, samples), i => Assert.EndsWith(string.Create(CultureInfo.InvariantCulture, $",{i % 2000 - 1000},{i * 7 % 4001 - 2000},{-i % 500},{i * 13 % 997}"), lines[i + 1], StringComparison.Ordinal));
        Read_back(folder);
        double[] times = [.. lines[1..^1].Select(l => double.Parse(l.Split(',')[0], CultureInfo.InvariantCulture))];
        Assert.All(Enumerable.Range(1, samples - 1), i => Assert.True(times[i] > times[i - 1]));
        Assert.Equal(["taken.csv"], folder.Names);
    }

    /// <summary>What was recorded is a recording like any other.</summary>
    private static void Read_back(Folder folder)
    {
        Copy(folder);
        string hand = folder.Changed("file = \"signals/morning.edf\"", "file = \"taken.csv\"");
        File.WriteAllText(hand, File.ReadAllText(hand).Replace("[signals.recordings.noon]", "[signals.recordings.late]", StringComparison.Ordinal).Replace("file = \"signals/noon.edf\"", "file = \"taken.csv\"", StringComparison.Ordinal));
        Started contacts = Started.Run("contacts", hand);
        Assert.Equal((0, ""), (contacts.Code, contacts.Talk));
        Assert.Contains("2000 samples a second", Plain(contacts.Answers), StringComparison.Ordinal);
        Directory.Delete(folder["signals"], recursive: true);
        File.Delete(hand);
    }

    [Theory]
    [InlineData(PseudoTerminal.CtrlC)]
    [InlineData(PseudoTerminal.Ended)]
    public void Keeps_the_recording_when_stopped(int signal)
    {
        // A background job of a shell without job control is deaf to Ctrl-C, and so is what it starts.
        Assert.SkipWhen(PseudoTerminal.Ignores(signal), "This process ignores Ctrl-C, so what it starts does too.");
        using PseudoTerminal? port = PseudoTerminal.Open();
        Assert.SkipWhen(port is null, "No pseudo-terminal here.");
        using Folder folder = new();
        using Process listener = Listen(port!.Port, folder["taken.csv"]);
        Wait(listener, "Listening");
        port.Write("0,1,2,3,4\n1,1,2,3,4\n3,1,2,3,4\nnoise\n"u8);
        Wait(listener, "3 samples, 1 lost, 1 unreadable");
        PseudoTerminal.Signal(listener.Id, signal);
        listener.WaitForExit();
        Assert.Equal(130, listener.ExitCode);
        Assert.Contains("Stopped by you", Plain(listener.StandardOutput.ReadToEnd()), StringComparison.Ordinal);
        Assert.Equal(["time_s,ridge [counts],hollow [counts],elbow [counts],rim [counts]", "0.000000,1,2,3,4", "0.000500,1,2,3,4", "0.001500,1,2,3,4", "# times by the stated rate; 1 samples lost; 0 pauses"], File.ReadAllLines(folder["taken.csv"]));
        Assert.Equal(["taken.csv"], folder.Names);
    }

    /// <summary>Whoever made the program deaf to Ctrl-C wants it so; it goes on, and is ended by SIGTERM.</summary>
    [Fact]
    public void Is_deaf_to_Ctrl_C_where_the_shell_made_it_so_and_still_keeps_the_recording_when_ended()
    {
        using PseudoTerminal? port = PseudoTerminal.Open();
        Assert.SkipWhen(port is null, "No pseudo-terminal here.");
        using Folder folder = new();
        using Process listener = Listen(port!.Port, folder["taken.csv"], deaf: true);
        Wait(listener, "Listening");
        port.Write("0,1,2,3,4\n"u8);
        Wait(listener, "1 samples, 0 lost");
        PseudoTerminal.Signal(listener.Id, PseudoTerminal.CtrlC);
        port.Write("1,1,2,3,4\n"u8);
        Wait(listener, "2 samples, 0 lost");
        PseudoTerminal.Signal(listener.Id, PseudoTerminal.Ended);
        listener.WaitForExit();
        Assert.Equal(130, listener.ExitCode);
        Assert.Equal(4, File.ReadAllLines(folder["taken.csv"]).Length);
    }

    [Fact]
    public void Refuses_ports_and_files_that_cannot_be_used()
    {
        using Folder folder = new();
        Assert.Contains("no such port", Started.Run("listen", Started.Demo, "--port", folder["nowhere"]).Talk, StringComparison.Ordinal);
        Assert.Contains("there already", Started.Run("listen", Started.Demo, "--record", folder.Write("mine.csv", "mine")).Talk, StringComparison.Ordinal);
        Assert.Equal(2, Started.Run("listen", Started.Demo, "--rate", "1").Code);
        Assert.Equal(2, Started.Run("sites", Started.Demo, "--count", "0").Code);
        Assert.Equal(2, Started.Run("sites", Started.Demo, "--count", "13").Code);
    }

    private static Process Listen(string port, string record, bool deaf = false)
    {
        string shell = deaf ? "trap '' INT; exec \"$@\"" : "exec \"$@\"";
        return Process.Start(new ProcessStartInfo("/bin/sh", ["-c", shell, "sh", "dotnet", Started.Dll, "listen", Started.Demo, "--port", port, "--rate", "2000", "--counted", "--record", record])
        {
            UseShellExecute = false,
            RedirectStandardOutput = true,
            RedirectStandardError = true,
            StandardOutputEncoding = Encoding.UTF8,
            StandardErrorEncoding = Encoding.UTF8,
        })!;
    }

    private static void Wait(Process listener, string words)
    {
        string? line = listener.StandardError.ReadLine();
        while (line is not null && !line.Contains(words, StringComparison.Ordinal))
        {
            line = listener.StandardError.ReadLine();
        }

        Assert.NotNull(line);
    }

    private static void Copy(Folder folder)
    {
        Directory.CreateDirectory(folder["signals"]);
        foreach (string file in Directory.GetFiles(Path.Combine(DemoFolder, "signals")))
        {
            File.Copy(file, Path.Combine(folder["signals"], Path.GetFileName(file)));
        }
    }

    private static string Plain(string wrapped) => string.Join(' ', wrapped.Split((char[])[' ', '\n'], StringSplitOptions.RemoveEmptyEntries));
}
