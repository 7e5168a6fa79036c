using System.Globalization;
using System.Text.Json;
using Graspwright.Mechanics.Drive;
using Graspwright.Mechanics.Run;

namespace Graspwright.Mechanics.Tests.Run;

/// <summary>Our run beside a case's numbers, at the case's own angles, interpolating neither side.</summary>
internal sealed class DriveCaseComparison
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

        foreach (JsonProperty curve in expected.EnumerateObject())
        {
            foreach ((string name, Func<double[], double> read, bool force, Func<JsonElement, JsonElement> pick, JsonElement list) in Readers(curve))
            {
                double[] theirs = [.. list.EnumerateArray().Select(v => pick(v)).Select(v => v.ValueKind == JsonValueKind.Null ? double.NaN : v.GetDouble())];
                double[] ours = [.. mine.Select(r => read(r!))];
                Curve($"{leg}.{name}", thetas, ours, theirs, force, rows);
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

    private void Curve(string name, double[] thetas, double[] ours, double[] theirs, bool force, IReadOnlyList<double[]> rows)
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

        _ = rows;
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
            yield return (curve.Name, r => curve.Name == "rail_normal_n" ? Math.Abs(r[s.Column]) / s.Unit : r[s.Column] / s.Unit, s.Force,
                curve.Name == "rail_normal_n" ? v => v : Whole, curve.Value);
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

    private void Summary()
    {
        JsonElement s = _case.Expected.GetProperty("summary");
        bool rubs = _case.HasFriction;
        double[] end = _run.AtEnd;
        double touch = 1e-4, limit = rubs ? 5e-3 : 1e-4, share = rubs ? 1e-3 : 1e-5;
        Angle(s, "first_touch_deg", _run.First(EventKind.Touch)?.ThetaRadians, touch);
        Angle(s, "all_free_touch_deg", _run.First(EventKind.AllTouch)?.ThetaRadians, touch);
        Angle(s, "shift_start_deg", _run.First(EventKind.ShiftStart)?.ThetaRadians, limit);
        Angle(s, "shift_end_deg", _run.First(EventKind.ShiftEnd)?.ThetaRadians, limit);
        Angle(s, "theta_end_deg", end[TraceLayout.Theta], limit);
        if (s.TryGetProperty("touch_deg_by_finger", out JsonElement touches))
        {
            foreach (JsonProperty p in touches.EnumerateObject())
            {
                RunEvent? e = _run.Events.FirstOrDefault(e => e.Kind == EventKind.Touch && !e.Opening && e.Subject == p.Name);
                Angle(touches, p.Name, e?.ThetaRadians, touch);
            }
        }

        Value(s, "ended_by", _run.End == RunEnd.Effort ? "effort limit" : _run.End == RunEnd.Travel ? "theta_max" : "not followed");
        Number(s, "shift_start_slot_load_n", _run.First(EventKind.ShiftStart)?.Value, share);
        Number(s, "shift_end_slot_load_n", _run.First(EventKind.ShiftEnd)?.Value, share);
        Number(s, "shift_give_back_mm", _run.ShiftGiveBack * 1e3, rubs ? 2e-3 : 2e-4);
        Number(s, "grip_n_at_end", end[TraceLayout.Grip], share);
        Number(s, "wrist_moment_nm_at_end", end[TraceLayout.Tau], share);
        Number(s, "effort_share_at_end", end[TraceLayout.EffortShare], share);
        Number(s, "work_in_closing_mj", _run.WorkIn * 1e3, rubs ? 1e-3 : 1e-4);
        Number(s, "dissipated_closing_mj", _run.DissipatedClosing * 1e3, 2e-3);
        Number(s, "dissipated_opening_mj", _run.DissipatedOpening * 1e3, 2e-3);
        Number(s, "work_back_opening_mj", _run.WorkBack * 1e3, 1e-3);
        Number(s, "efficiency", _run.WorkIn > 0 ? end[TraceLayout.ContactEnergy] / _run.WorkIn : 0, rubs ? 2e-3 : 1e-4);
        Number(s, "friction_efficiency", _run.WorkIn > 0 ? 1 - _run.DissipatedClosing / _run.WorkIn : 1, 1e-3);
        Number(s, "mechanical_advantage_n_per_nm", end[TraceLayout.Grip] / end[TraceLayout.Tau], share);
        Number(s, "loop_mean_width_nm", (_run.WorkIn - _run.WorkBack) / end[TraceLayout.Theta], 1e-3);
        Number(s, "loop_max_width_nm", _run.LoopMax, 1e-2);
        Jumps(s);
        Contacts(s);
        Peaks(s);
    }

    private void Jumps(JsonElement s)
    {
        if (!s.TryGetProperty("jumps", out JsonElement jumps))
        {
            return;
        }

        Compared++;
        List<JsonElement> theirs = [.. jumps.EnumerateArray()];
        if (theirs.Count != _run.Jumps.Count)
        {
            _differences.Add(FormattableString.Invariant($"jumps: ours {string.Join("; ", _run.Jumps.Select(j => FormattableString.Invariant($"{j.ThetaRadians / Degree:0.0000}° lost {j.EnergyLost * 1e3:0.000000} mJ")))}; theirs {jumps.GetRawText()}"));
            return;
        }

        for (int i = 0; i < theirs.Count; i++)
        {
            Angle(theirs[i], "theta_deg", _run.Jumps[i].ThetaRadians, _case.HasFriction ? 5e-3 : 1e-4);
            Number(theirs[i], "energy_lost_mj", _run.Jumps[i].EnergyLost * 1e3, _case.HasFriction ? 1e-2 : 1e-3);
        }
    }

    private void Contacts(JsonElement s)
    {
        if (!s.TryGetProperty("contact_lost", out JsonElement lost))
        {
            return;
        }

        List<RunEvent> ours = [.. _run.Events.Where(e => e.Kind == EventKind.ContactLost && !e.Opening)];
        List<JsonElement> theirs = [.. lost.EnumerateArray()];
        Compared++;
        if (ours.Count != theirs.Count)
        {
            _differences.Add($"contact lost: ours {ours.Count}, theirs {lost.GetRawText()}");
            return;
        }

        foreach (JsonElement t in theirs)
        {
            RunEvent? e = ours.Find(e => e.Subject == t.GetProperty("finger").GetString() && e.Part == t.GetProperty("segment").GetInt32());
            Angle(t, "theta_deg", e?.ThetaRadians, _case.HasFriction ? 5e-3 : 1e-4);
            Number(t, "peak_n", e?.Value, _case.HasFriction ? 5e-3 : 1e-3);
        }
    }

    private void Peaks(JsonElement s)
    {
        if (!s.TryGetProperty("peaks", out JsonElement peaks))
        {
            return;
        }

        foreach (JsonProperty p in peaks.EnumerateObject())
        {
            string name = p.Name.Replace('_', ' ').Replace(':', ' ').Replace('.', ' ');
            string finger = name.Split(' ')[0];
            int f = Index(_l.FingerNames, finger);
            bool pin = f >= 0;
            bool locked = pin && _case.Options.Locks.Any(k => k.FingerIndex == f);
            bool ratio = pin && _case.Drive.Fingers[f].Joints is CoupledJoints { PipFromMcp: RatioCoupling } or CoupledJoints { DipFromPip: RatioCoupling };
            if (locked || ratio)
            {
                continue;
            }

            ForcePeak? ours = _run.Peaks.FirstOrDefault(q => q.Subject == name);
            if (ours is null)
            {
                _differences.Add($"peak {name}: not reported");
                continue;
            }

            Number(p.Value, "force_n", ours.Newtons, 1e-3, $"peak {name}");
        }
    }

    private void Angle(JsonElement s, string key, double? ours, double allowedDegrees)
    {
        if (!s.TryGetProperty(key, out JsonElement v))
        {
            return;
        }

        Compared++;
        double? theirs = v.ValueKind == JsonValueKind.Null ? null : v.GetDouble();
        double? mine = ours / Degree;
        if (theirs is null != mine is null || (theirs is { } t && !(Math.Abs(t - mine!.Value) <= allowedDegrees)))
        {
            _differences.Add(string.Create(CultureInfo.InvariantCulture, $"{key}: ours {mine:0.########}, theirs {theirs:0.########}"));
        }
    }

    private void Number(JsonElement s, string key, double? ours, double relative, string? name = null)
    {
        if (!s.TryGetProperty(key, out JsonElement v) || v.ValueKind == JsonValueKind.Null)
        {
            return;
        }

        Compared++;
        double theirs = v.GetDouble();
        if (ours is not { } mine || !(Math.Abs(mine - theirs) <= relative * Math.Abs(theirs) + 1e-6))
        {
            _differences.Add(string.Create(CultureInfo.InvariantCulture, $"{name ?? key}: ours {ours:0.########}, theirs {theirs:0.########}"));
        }
    }

    private void Value(JsonElement s, string key, string ours)
    {
        Compared++;
        if (s.TryGetProperty(key, out JsonElement v) && v.GetString() != ours)
        {
            _differences.Add($"{key}: ours {ours}, theirs {v.GetString()}");
        }
    }
}
