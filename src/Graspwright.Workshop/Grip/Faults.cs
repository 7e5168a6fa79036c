using System.Globalization;
using Graspwright.Mechanics.Run;
using Graspwright.Workshop.Results;

namespace Graspwright.Workshop.Grip;

/// <summary>Puts what is wrong with a question, a hand or an object into plain words.</summary>
public static class Faults
{
    /// <summary>A drive that cannot be put together.</summary>
    /// <param name="file">Hand file.</param>
    /// <param name="fault">What the engine found.</param>
    public static InputError OfHand(string file, DriveException fault)
    {
        ArgumentNullException.ThrowIfNull(fault);
        string millimetres = Millimetres(fault.Amount);
        (string found, string allowed, string fix) = fault.Fault switch
        {
            DriveFault.NotAssembled => ($"cannot be put together at rest: it misses by {millimetres} mm", "parts that meet at rest", "Check the lengths and places of its pins."),
            DriveFault.DeadCentreAtRest => ("the pull link's line passes through the fulcrum or the wrist's axis at rest", "a line clear of both", "Move the fulcrum, the anchor or the input pin."),
            DriveFault.NoLength => ($"the link has a length of {millimetres} mm", "a length above 0", "Check the places of its two ends."),
            DriveFault.RodWithSlack => ($"a rod is given a slack of {millimetres} mm", "slack for a cord only", "Make it a cord, or set its slack to 0 mm."),
            _ => (fault.Message, "", ""),
        };
        return new(file, 0, 0, fault.Subject, found, allowed, fix);
    }

    /// <summary>An object that lies in a finger at rest, as an error.</summary>
    /// <param name="file">Hand file.</param>
    /// <param name="thing">The object.</param>
    /// <param name="fault">What the engine found.</param>
    public static InputError OfObject(string file, Hand.HandObject thing, DriveException fault)
    {
        ArgumentNullException.ThrowIfNull(thing);
        ArgumentNullException.ThrowIfNull(fault);
        return new(file, 0, 0, thing.Name, Lies(fault), "an object clear of the open fingers", Move);
    }

    /// <summary>An object that lies in a finger at rest, as a finding.</summary>
    /// <param name="thing">The object.</param>
    /// <param name="fault">What the engine found.</param>
    public static Finding Overlap(Hand.HandObject thing, DriveException fault)
    {
        ArgumentNullException.ThrowIfNull(thing);
        ArgumentNullException.ThrowIfNull(fault);
        return new("object_overlaps", thing.Name, Verdict.Fails, $"With the hand open the object {Lies(fault)}; it was not run.", Move)
        {
            Figure = fault.Amount * 1000,
            Limit = 0,
            Unit = "mm",
        };
    }

    /// <summary>A name that the hand does not have.</summary>
    /// <param name="file">Hand file.</param>
    /// <param name="key">The option.</param>
    /// <param name="name">The name given.</param>
    /// <param name="known">The names there are.</param>
    public static InputError Unknown(string file, string key, string name, IEnumerable<string> known)
    {
        string[] names = [.. known];
        string fix = Hand.Nearest.To(name, names) is { } near ? $"Did you mean '{near}'?" : "Use a name as the file spells it.";
        return new(file, 0, 0, key, $"'{name}' is not in the hand file", names.Length > 0 ? string.Join(", ", names) : "nothing: the file names none", fix);
    }

    /// <summary>What is wrong with a value of the hand file, with the line that says it.</summary>
    /// <param name="editor">The hand file.</param>
    /// <param name="file">Its name.</param>
    /// <param name="path">Path of the value.</param>
    /// <param name="found">What was found.</param>
    /// <param name="allowed">What is allowed.</param>
    /// <param name="fix">The likely fix.</param>
    public static InputError At(Hand.HandEditor editor, string file, string path, string found, string allowed, string fix)
    {
        ArgumentNullException.ThrowIfNull(editor);
        (int line, int column) = editor.PlaceOf(path) ?? (0, 0);
        return new(file, line, column, path, found, allowed, fix);
    }

    private const string Move = "Move the object, or open the fingers further.";

    private static string Lies(DriveException fault) => $"lies {Millimetres(fault.Amount)} mm inside {fault.Subject}";

    private static string Millimetres(double metres) => (metres * 1000).ToString("0.##", CultureInfo.InvariantCulture);
}
