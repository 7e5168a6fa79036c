using System.Globalization;
using System.Text.Json;
using Graspwright.Mechanics.Drive;
using Graspwright.Mechanics.Run;

namespace Graspwright.Mechanics.Tests.Run;

/// <content>Events, figures, jumps, lost contacts and peaks of a case.</content>
internal sealed partial class DriveCaseComparison
{
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
        // Theirs is a quadrature over steps of 0.25°; ours stands still to 2e-8 of itself below 0.5°, 2e-5 beside theirs.
        Number(s, "shift_give_back_mm", _run.ShiftGiveBack * 1e3, rubs ? 1e-3 : 5e-5);
        Number(s, "grip_n_at_end", end[TraceLayout.Grip], share);
        Number(s, "wrist_moment_nm_at_end", end[TraceLayout.Tau], share);
        Number(s, "effort_share_at_end", end[TraceLayout.EffortShare], share);
        Number(s, "work_in_closing_mj", _run.WorkIn * 1e3, rubs ? 1e-3 : 1e-4);
        Number(s, "dissipated_closing_mj", _run.DissipatedClosing * 1e3, 1e-3);
        Number(s, "dissipated_opening_mj", _run.DissipatedOpening * 1e3, 1e-3);
        Number(s, "work_back_opening_mj", _run.WorkBack * 1e3, 1e-3);
        Number(s, "efficiency", _run.WorkIn > 0 ? end[TraceLayout.ContactEnergy] / _run.WorkIn : 0, rubs ? 1e-3 : 1e-4);
        Number(s, "friction_efficiency", _run.WorkIn > 0 ? 1 - _run.DissipatedClosing / _run.WorkIn : 1, 1e-3);
        Number(s, "mechanical_advantage_n_per_nm", end[TraceLayout.Grip] / end[TraceLayout.Tau], share);
        Number(s, "loop_mean_width_nm", (_run.WorkIn - _run.WorkBack) / end[TraceLayout.Theta], 1e-3);
        Number(s, "loop_max_width_nm", _run.LoopMax, 1e-3);
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
            Number(theirs[i], "energy_lost_mj", _run.Jumps[i].EnergyLost * 1e3, 1e-3);
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
            Number(t, "peak_n", e?.Value, 1e-3);
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
