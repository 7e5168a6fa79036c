using System.Globalization;
using System.Text.Json;
using Graspwright.Mechanics.Drive;
using Graspwright.Mechanics.Run;

namespace Graspwright.Mechanics.Tests.Run;

/// <summary>Our run beside a case's numbers, at the case's own angles, interpolating neither side.</summary>
internal sealed partial class DriveCaseComparison
{
    private const double Degree = Math.PI / 180;
    private readonly DriveCase _case;
    private readonly RunResult _run;
    private readonly List<string> _differences = [];
    private readonly TraceLayout _l;

    private DriveCaseComparison(DriveCase c, RunResult run)
    {
        _case = c;
        _run = run;
        _l = run.Layout;
    }

    public int Compared { get; private set; }

    public IReadOnlyList<string> Differences => _differences;

    public static DriveCaseComparison Of(DriveCase c, RunResult run)
    {
        DriveCaseComparison comparison = new(c, run);
        if (run.Failure is { } failure)
        {
            comparison._differences.Add(FormattableString.Invariant($"path lost at {failure.ThetaRadians / Degree:0.0000}°: {failure.Reason}"));
        }

        comparison.Curves("closing", run.Closing);
        comparison.Curves("opening", run.Opening);
        comparison.Summary();
        return comparison;
    }

    private void Curves(string leg, IReadOnlyList<double[]> rows)
    {
        if (!_case.Expected.TryGetProperty(leg, out JsonElement expected))
        {
            return;
        }

        double[] thetas = [.. expected.GetProperty("theta_deg").EnumerateArray().Select(v => v.GetDouble())];
        double[]?[] mine = [.. thetas.Select((t, k) => Row(rows, t, leg == "closing" ? k == thetas.Length - 1 : k == 0))];
        for (int k = 0; k < thetas.Length; k++)
        {
            if (mine[k] is null)
            {
                _differences.Add(FormattableString.Invariant($"{leg}: no state at {thetas[k]}°"));
                return;
            }
        }

        if (!_case.HasFriction)
        {
            Stops(leg, thetas, mine!, expected.GetProperty("stops_acting"));
        }

        foreach (JsonProperty curve in expected.EnumerateObject())
        {
            foreach ((string name, Func<double[], double> read, bool force, Func<JsonElement, JsonElement> pick, JsonElement list) in Readers(curve))
            {
                double[] theirs = [.. list.EnumerateArray().Select(v => pick(v)).Select(v => v.ValueKind == JsonValueKind.Null ? double.NaN : v.GetDouble())];
                double[] ours = [.. mine.Select(r => read(r!))];
                Curve($"{leg}.{name}", thetas, ours, theirs, force);
            }
        }
    }

    /// <summary>The stops that act, by name; with friction a stop may carry nothing and yet be met, so there they are not compared.</summary>
    private void Stops(string leg, double[] thetas, double[][] mine, JsonElement expected)
    {
        List<string> names = ["phi", "d", "s", .. _l.BarNames.Select(b => $"tilt:{b}")];
        foreach (Finger finger in _case.Drive.Fingers)
        {
            names.AddRange(Enumerable.Range(1, finger.Joints is AdaptiveJoints ? 3 : 1).Select(j => $"{finger.Name}.q{j.ToString(CultureInfo.InvariantCulture)}"));
        }

        for (int k = 0; k < thetas.Length; k++)
        {
            long bits = (long)mine[k][TraceLayout.Stops];
            IEnumerable<string> ours = names.SelectMany((n, i) => ((string, bool)[])[($"{n}:low", (bits >> (2 * i) & 1) != 0), ($"{n}:high", (bits >> (2 * i + 1) & 1) != 0)])
                .Where(stop => stop.Item2).Select(stop => stop.Item1).Order(StringComparer.Ordinal);
            string our = string.Join(' ', ours), their = string.Join(' ', expected[k].EnumerateArray().Select(v => v.GetString()!).Order(StringComparer.Ordinal));
            Compared++;
            if (our != their)
            {
                _differences.Add(FormattableString.Invariant($"{leg} stops at {thetas[k]}°: ours {our}; theirs {their}"));
            }
        }
    }

    private double[]? Row(IReadOnlyList<double[]> rows, double degrees, bool isEnd)
    {
        double[]? best = null;
        foreach (double[] row in rows)
        {
            double gap = Math.Abs(row[TraceLayout.Theta] / Degree - degrees);
            double allowed = isEnd ? (_case.HasFriction ? 5e-3 : 1e-4) : 1e-7;
            if (row[TraceLayout.OutputStep] == 1 && gap <= allowed && (best is null || gap < Math.Abs(best[TraceLayout.Theta] / Degree - degrees)))
            {
                best = row;
            }
        }

        return best;
    }

    private void Curve(string name, double[] thetas, double[] ours, double[] theirs, bool force)
    {
        double[] known = [.. theirs.Where(v => !double.IsNaN(v))];
        if (known.Length == 0)
        {
            return;
        }

        double range = known.Max() - known.Min(), peak = known.Max(Math.Abs);
        double allowed = _case.HasFriction ? Math.Max(1e-3 * (force ? peak : range), 1e-5) : Math.Max(1e-5 * range, 1e-6);
        double worst = 0, at = 0, a = 0, b = 0;
        for (int k = 0; k < theirs.Length; k++)
        {
            if (double.IsNaN(theirs[k]))
            {
                continue;
            }

            Compared++;
            double gap = Math.Abs(ours[k] - theirs[k]);
            if (!(gap <= worst))
            {
                (worst, at, a, b) = (gap, thetas[k], ours[k], theirs[k]);
            }
        }

        if (!(worst <= allowed))
        {
            _differences.Add(string.Create(CultureInfo.InvariantCulture, $"{name} at {at:0.####}°: ours {a:0.########}, theirs {b:0.########}, apart {worst:0.###e+0}, allowed {allowed:0.###e+0}"));
        }
    }

    private IEnumerable<(string Name, Func<double[], double> Read, bool Force, Func<JsonElement, JsonElement> Pick, JsonElement List)> Readers(JsonProperty curve)
    {
        static JsonElement Whole(JsonElement v) => v;
        (int Column, double Unit, bool Force)? simple = curve.Name switch
        {
            "theta_deg" => null,
            "wrist_moment_nm" => (TraceLayout.Tau, 1, true),
            "effort_share" => (TraceLayout.EffortShare, 1, true),
            "crank_deg" => (TraceLayout.Phi, Degree, false),
            "slot_shift_mm" => (TraceLayout.Shift, 1e-3, false),
            "carriage_mm" => (TraceLayout.Carriage, 1e-3, false),
            "output_pin_radius_mm" => (TraceLayout.OutputPinRadius, 1e-3, false),
            "output_lever_mm" => (TraceLayout.OutputArm, 1e-3, false),
            "pull_link_n" => (TraceLayout.PullLink, 1, true),
            "transfer_link_n" => (TraceLayout.TransferLink, 1, true),
            "slot_load_n" => _case.Drive.Crank.Slot is null ? null : (TraceLayout.SlotLoad, 1, true),
            "rail_force_n" => (TraceLayout.CarriageForce, 1, true),
            "rail_normal_n" => (TraceLayout.RailNormal, 1, true),
            "fulcrum_n" => (TraceLayout.Fulcrum, 1, true),
            "stored_energy_mj" => (TraceLayout.Stored, 1e-3, true),
            "grip_n" => (TraceLayout.Grip, 1, true),
            "contact_energy_mj" => (TraceLayout.ContactEnergy, 1e-3, true),
            _ => null,
        };
        if (simple is { } s)
        {
            yield return (curve.Name, r => r[s.Column] / s.Unit, s.Force, Whole, curve.Value);
            yield break;
        }

        if (curve.Name == "object_resultant_n")
        {
            yield return ("object_resultant_x", r => r[TraceLayout.ResultantX], true, v => v[0], curve.Value);
            yield return ("object_resultant_y", r => r[TraceLayout.ResultantY], true, v => v[1], curve.Value);
            yield break;
        }

        if (curve.Value.ValueKind != JsonValueKind.Object)
        {
            yield break; // theta itself, lists of stops and of where friction sticks
        }

        foreach (JsonProperty part in curve.Value.EnumerateObject())
        {
            int bar = Index(_l.BarNames, part.Name), finger = Index(_l.FingerNames, part.Name);
            switch (curve.Name)
            {
                case "tilt_deg":
                    yield return ($"tilt_deg.{part.Name}", r => AllSlack(r) ? double.NaN : r[TraceLayout.Tilt(bar)] / Degree, false, Whole, part.Value);
                    break;
                case "bar_pivot_n":
                    yield return ($"bar_pivot_n.{part.Name}", r => r[TraceLayout.Pivot(bar)], true, Whole, part.Value);
                    break;
                case "leaf_travel_mm":
                    yield return ($"leaf_travel_mm.{part.Name}", r => r[_l.LeafTravel(finger)] * 1e3, false, Whole, part.Value);
                    break;
                case "leaf_pull_n":
                    yield return ($"leaf_pull_n.{part.Name}", r => r[_l.LeafPull(finger)], true, Whole, part.Value);
                    break;
                case "fingertip_mm":
                    for (int i = 0; i < 2; i++)
                    {
                        int axis = i;
                        yield return ($"fingertip_mm.{part.Name}[{i}]", r => r[_l.TipX(finger) + axis] * 1e3, false, v => v[axis], part.Value);
                    }

                    break;
                case "contact_point_mm":
                case "joints_deg":
                case "contact_n":
                case "overlap_mm":
                case "finger_pins_n":
                    foreach (var reader in Triples(curve.Name, part, finger))
                    {
                        yield return reader;
                    }

                    break;
            }
        }
    }

    private IEnumerable<(string Name, Func<double[], double> Read, bool Force, Func<JsonElement, JsonElement> Pick, JsonElement List)> Triples(string curve, JsonProperty part, int finger)
    {
        if (part.Value.EnumerateArray().First().ValueKind == JsonValueKind.Null)
        {
            yield break; // nothing held
        }

        bool ratioCoupled = _case.Drive.Fingers[finger].Joints is CoupledJoints { PipFromMcp: RatioCoupling } or CoupledJoints { DipFromPip: RatioCoupling };
        bool locked = _case.Options.Locks.Any(k => k.FingerIndex == finger);
        for (int i = 0; i < 3; i++)
        {
            int k = i;
            string name = $"{curve}.{part.Name}[{i}]";
            switch (curve)
            {
                case "joints_deg":
                    yield return (name, r => r[_l.Joint(finger, k)] / Degree, false, v => v[k], part.Value);
                    break;
                case "contact_n":
                    yield return (name, r => r[_l.Contact(finger, k)], true, v => v[k], part.Value);
                    break;
                case "overlap_mm":
                    yield return (name, r => r[_l.Overlap(finger, k)] * 1e3, false, v => v[k], part.Value);
                    break;
                case "finger_pins_n" when !ratioCoupled && !locked:
                    yield return (name, r => r[_l.Pin(finger, k)], true, v => v[k], part.Value);
                    break;
                case "contact_point_mm":
                    yield return (name + ".x", r => r[_l.ContactPointX(finger, k)] * 1e3, false, v => v[k][0], part.Value);
                    yield return (name + ".y", r => r[_l.ContactPointX(finger, k) + 1] * 1e3, false, v => v[k][1], part.Value);
                    break;
            }
        }
    }

    private bool AllSlack(double[] row) => _l.FingerNames.Select((_, f) => row[_l.LeafPull(f)]).All(t => t == 0);

    private static int Index(IReadOnlyList<string> names, string name)
    {
        for (int i = 0; i < names.Count; i++)
        {
            if (names[i] == name)
            {
                return i;
            }
        }

        return -1;
    }
}
