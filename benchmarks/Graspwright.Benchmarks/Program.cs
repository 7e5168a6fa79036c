using System.Globalization;
using Graspwright.Benchmarks;

const int BadInput = 2;
int hands = 10_000;
string? write = null;
Dictionary<string, Func<Section>> all = new(StringComparer.Ordinal)
{
    ["coupled"] = ClosingTimes.Coupled,
    ["adaptive"] = ClosingTimes.Adaptive,
    ["frictionless"] = ClosingTimes.Frictionless,
    ["scipy"] = FingerBesideScipy.Measure,
    ["hands"] = () => ManyHands.Measure(hands),
    ["signals"] = SignalTimes.Measure,
    ["grip"] = GripStart.Measure,
    ["jobs"] = JobTimes.Measure,
    ["sheets"] = SheetTimes.Measure,
    ["lasts"] = HandLives.Measure,
    ["deciding"] = DecidingTimes.Measure,
    ["lives"] = LifeFits.Measure,
    ["mould"] = MouldTimes.Measure,
    ["form"] = FormTimes.Measure,
    ["page"] = PageTimes.Measure,
};
if (args is [SignalTimes.OfOneHour, var recorded])
{
    Console.WriteLine(SignalTimes.MemoryOfOneHour(recorded)); // a process of its own, whose memory is its own
    return 0;
}

List<string> asked = [];
for (int i = 0; i < args.Length; i++)
{
    string? value = i + 1 < args.Length ? args[i + 1] : null;
    if (args[i] == "--write" && value is not null)
    {
        write = value;
        i++;
    }
    else if (args[i] == "--hands" && int.TryParse(value, NumberStyles.None, CultureInfo.InvariantCulture, out hands) && hands > 0)
    {
        i++;
    }
    else if (all.ContainsKey(args[i]))
    {
        asked.Add(args[i]);
    }
    else
    {
        Console.Error.WriteLine($"'{args[i]}' is not understood here. Allowed: {string.Join(", ", all.Keys)}, --hands NUMBER, --write FILE. Without a name everything is measured.");
        return BadInput;
    }
}

List<Section> sections = [];
foreach (string name in asked.Count > 0 ? asked : [.. all.Keys])
{
    Console.Error.WriteLine($"Measuring {name} …");
    Section section = all[name]();
    sections.Add(section);
    Console.WriteLine($"\n## {section.Title}\n\n{section.Words}\n");
    Console.WriteLine(string.Join('\n', Row.Table(section.Rows)));
}

if (write is not null)
{
    string half = write + ".part";
    File.WriteAllText(half, Page.Write(sections));
    File.Move(half, write, overwrite: true);
    Console.Error.WriteLine($"Wrote {write}");
}

return 0;
