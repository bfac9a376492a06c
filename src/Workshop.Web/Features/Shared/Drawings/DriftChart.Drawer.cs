using System.Globalization;
using System.Text;
using Workshop.Domain.Drift;
using Workshop.Domain.Measures;
using Workshop.Web.Features.Drift;

namespace Workshop.Web.Features.Shared.Drawings;

public sealed partial record DriftChart
{
    private sealed class Drawer
    {
        private const double BarWidth = 5.5;
        private const double Thinnest = 2.5;
        private const double OpenLength = 16;
        private const double MarkTextRoom = 110;
        private const double MarkRow = 15;
        private const double LabelRoom = 13;

        private readonly string id;
        private readonly DriftOfLobe lobe;
        private readonly OdometerUnit unit;
        private readonly DriftView view;
        private readonly (double From, double To) across;
        private readonly (double From, double To) upright;

        public Drawer(string id, DriftOfLobe lobe, OdometerUnit unit, DriftView view)
        {
            (this.id, this.lobe, this.unit, this.view) = (id, lobe, unit, view);
            across = Across();
            upright = Upright();
        }

        private IEnumerable<Distance> Distances => lobe.Legs.SelectMany(l => l.Readings.Select(r => r.EngineKm))
            .Concat(lobe.LeftOut.Select(o => o.EngineKm));

        public DriftChart Draw(Distance? nextCheck)
        {
            var check = nextCheck is { } at && In(at) >= across.From && In(at) <= across.To ? nextCheck : null;
            var marks = Marks(check).ToList();
            return Draw([.. marks.Take(lobe.Changes.Count)], marks.Skip(lobe.Changes.Count).FirstOrDefault());
        }

        private DriftChart Draw(IReadOnlyList<ChartMark> marks, ChartMark? nextCheck) => new()
        {
            Id = id,
            Title = $"{char.ToUpperInvariant(lobe.Spoken[0])}{lobe.Spoken[1..]}: clearance {(view == DriftView.AsMeasured ? "as measured" : "with the shims' part taken out")}",
            Description = DriftWords.Describe(lobe, unit),
            AxisText = $"what the engine has done, {unit.Symbol()}",
            Across = [.. Ticks(across.From, across.To).Select(t => new ChartTick(XOf(t), t.ToString("#,0", CultureInfo.InvariantCulture)))],
            Upright = [.. Ticks(upright.From, upright.To).Select(t => new ChartTick(Y(t), t.ToString("0.00##", CultureInfo.InvariantCulture)))],
            Limits = Stepped(lobe.LowerLimitMm.Millimetres) + Stepped(lobe.UpperLimitMm.Millimetres),
            SetTo = Stepped(lobe.SetToMm.Millimetres),
            Bars = [.. Bars()],
            Marks = marks,
            NextCheck = nextCheck,
            Labels = [.. Labels()],
            Estimate = Median(beyond: false),
            Ahead = Median(beyond: true),
            Band = Between(0, 4),
            InnerBand = Between(1, 3),
            Reach = ReachOf(),
        };

        private double In(Distance distance) => (double)(unit == OdometerUnit.Miles ? distance.Miles : distance.Kilometres);

        private double XOf(double distance) => Left + ((distance - across.From) / (across.To - across.From) * (Right - Left));

        private double X(Distance distance) => Math.Clamp(XOf(In(distance)), Left, Right);

        private double Y(double mm) =>
            Math.Clamp(Bottom - ((mm - upright.From) / (upright.To - upright.From) * (Bottom - Top)), Top, Bottom);

        private double Y(decimal mm) => Y((double)mm);

        private (double From, double To) Across()
        {
            var ends = Distances.Concat(lobe.Forecast?.Fan.Select(f => f.EngineKm) ?? []).Select(In).ToList();
            var (least, most) = (ends.Min(), ends.Max());
            var room = Math.Max((most - least) * 0.06, 1000);
            return (Math.Max(0, least - room), most + room);
        }

        private (double From, double To) Upright()
        {
            var limits = lobe.Legs.SelectMany(l => l.ShimSteps.Select(s => s.PartMm)).DefaultIfEmpty(0)
                .SelectMany(part => new[] { lobe.LowerLimitMm.Millimetres + LimitShift(part), lobe.UpperLimitMm.Millimetres + LimitShift(part) });
            var read = lobe.Legs.SelectMany(l => l.Readings).SelectMany(r => new[] { Shown(r.YLowerMm, r.ShimPartMm), Shown(r.YUpperMm, r.ShimPartMm) })
                .Concat(lobe.LeftOut.SelectMany(o => new[] { o.GoMm?.Millimetres, o.NoGoMm?.Millimetres }));
            var ends = read.OfType<decimal>().Concat(limits).Select(mm => (double)mm).ToList();
            var (least, most) = (ends.Min(), ends.Max());
            var room = (most - least) * 0.12;
            return (least - room, most + room);
        }

        /// <summary>y* as this view shows it.</summary>
        private decimal? Shown(decimal? y, decimal partMm) => view == DriftView.AsMeasured ? y - partMm : y;

        private decimal LimitShift(decimal partMm) => view == DriftView.AsMeasured ? 0 : partMm;

        /// <summary>A clearance that stays the same, as a line: straight as measured, with a step at each swap otherwise.</summary>
        private string Stepped(decimal mm)
        {
            if (view == DriftView.AsMeasured || lobe.Legs.Count == 0)
            {
                return $"M{Write(Left)} {Write(Y(mm))}H{Write(Right)}";
            }

            var path = new StringBuilder();
            for (var i = 0; i < lobe.Legs.Count; i++)
            {
                var steps = lobe.Legs[i].ShimSteps;
                path.Append('M').Append(Write(i == 0 ? Left : X(steps[0].EngineKm))).Append(' ').Append(Write(Y(mm + steps[0].PartMm)));
                foreach (var step in steps.Skip(1))
                {
                    path.Append('H').Append(Write(X(step.EngineKm))).Append('V').Append(Write(Y(mm + step.PartMm)));
                }

                path.Append('H').Append(Write(i == lobe.Legs.Count - 1 ? Right : X(lobe.Legs[i + 1].ShimSteps[0].EngineKm)));
            }

            return path.ToString();
        }

        private IEnumerable<ChartBar> Bars() => lobe.Legs.SelectMany(l => l.Readings)
            .Select(r => Bar(
                r.EngineKm, r.Stage == Domain.Clearances.Stage.AsLeft, Shown(r.YLowerMm, r.ShimPartMm), Shown(r.YUpperMm, r.ShimPartMm),
                r.Stage == Domain.Clearances.Stage.AsLeft ? "left" : "found"))
            .Concat(lobe.LeftOut.Where(_ => view == DriftView.AsMeasured).Select(o => Bar(
                o.EngineKm, o.Stage == Domain.Clearances.Stage.AsLeft, o.GoMm?.Millimetres, o.NoGoMm?.Millimetres, "kept-out")));

        private ChartBar Bar(Distance at, bool asLeft, decimal? lower, decimal? upper, string look)
        {
            // As found stands to the left of its distance and as left to the right, so that neither hides the other.
            var left = X(at) + (asLeft ? 0.5 : -BarWidth - 0.5);
            var bottom = lower is { } l ? Y(l) : Y(upper!.Value) + OpenLength;
            var top = upper is { } u ? Y(u) : Y(lower!.Value) - OpenLength;
            if (bottom - top < Thinnest)
            {
                (top, bottom) = (((top + bottom) / 2) - (Thinnest / 2), ((top + bottom) / 2) + (Thinnest / 2));
            }

            var (right, middle) = (left + BarWidth, left + (BarWidth / 2));
            var roof = upper is null ? $"L{Write(middle)} {Write(top - 4)}L{Write(right)} {Write(top)}" : $"H{Write(right)}";
            var floor = lower is null ? $"L{Write(middle)} {Write(bottom + 4)}L{Write(left)} {Write(bottom)}Z" : $"H{Write(left)}Z";
            return new ChartBar($"M{Write(left)} {Write(top)}{roof}V{Write(bottom)}{floor}", look);
        }

        /// <summary>What was done, in order, and last the next check where there is one.</summary>
        private IEnumerable<ChartMark> Marks(Distance? check)
        {
            var all = lobe.Changes.Select(change => (At: change.EngineKm, Text: TextOf(change), Cuts: change.Cut is not null)).ToList();
            if (check is { } next)
            {
                all.Add((next, "next check", false));
            }

            var (lastX, row) = (double.NegativeInfinity, 0);
            foreach (var (at, text, cuts) in all)
            {
                var x = X(at);
                row = x - lastX < MarkTextRoom ? 1 - row : 0;
                lastX = x;
                yield return new ChartMark(x, Top - 6 - (MarkRow * row), text, cuts);
            }
        }

        private static string TextOf(DriftOfLobe.Change change) => change is { Cut: null, CameOutMm: { } cameOut, WentInMm: { } wentIn }
            ? (wentIn - cameOut).ToString("shim +0.000;shim -0.000", CultureInfo.InvariantCulture)
            : Words(change.Cut ?? LegCut.ShimUnmeasured);

        /// <summary>Words behind the limits and, where there is room between them, behind the set-to value.</summary>
        private IEnumerable<ChartLabel> Labels()
        {
            var shift = LimitShift(lobe.ShimPartNowMm);
            var (lower, upper, setTo) = (
                Y(lobe.LowerLimitMm.Millimetres + shift), Y(lobe.UpperLimitMm.Millimetres + shift), Y(lobe.SetToMm.Millimetres + shift));
            yield return new ChartLabel(upper + 4, "limit");
            yield return new ChartLabel(lower + 4, "limit");
            if (Math.Min(lower - setTo, setTo - upper) >= LabelRoom)
            {
                yield return new ChartLabel(setTo + 4, "set to");
            }
        }

        /// <summary>The middle of the fan, up to where the forecast begins or from there on.</summary>
        private string Median(bool beyond)
        {
            var samples = Samples().Where(s => beyond ? s.At >= lobe.Forecast!.FromKm : s.At <= lobe.Forecast!.FromKm).ToList();
            return samples.Count < 2 ? "" : "M" + string.Join('L', samples.Select(s => $"{Write(X(s.At))} {Write(Y(s.Mm[2]))}"));
        }

        /// <summary>What lies between two quantiles of the fan.</summary>
        private string Between(int lower, int upper)
        {
            var samples = Samples().ToList();
            return samples.Count < 2
                ? ""
                : "M" + string.Join('L', samples.Select(s => $"{Write(X(s.At))} {Write(Y(s.Mm[upper]))}"))
                    + "L" + string.Join('L', samples.AsEnumerable().Reverse().Select(s => $"{Write(X(s.At))} {Write(Y(s.Mm[lower]))}")) + "Z";
        }

        /// <summary>
        /// The fan as this view shows it: with the shims' part taken out it runs on; as measured it jumps where the shim was
        /// changed, and stands on both sides of every swap.
        /// </summary>
        private IEnumerable<(Distance At, IReadOnlyList<decimal> Mm)> Samples()
        {
            if (lobe.Forecast is not { Fan: { Count: > 1 } fan })
            {
                return [];
            }

            var last = lobe.Legs.Count == 0 || lobe.Legs[^1].Readings[^1].EngineKm < fan[0].EngineKm ? null : lobe.Legs[^1];
            var steps = last is null ? [] : last.ShimSteps.Select(s => new ShimStep(s.EngineKm, s.PartMm)).ToList();
            var swaps = steps.Skip(1).Where(s => s.From > fan[0].EngineKm && s.From < fan[^1].EngineKm).ToList();
            return fan.Select(f => (At: f.EngineKm, Before: false))
                .Concat(swaps.SelectMany(s => new[] { (At: s.From, Before: true), (At: s.From, Before: false) }))
                .Distinct().OrderBy(p => p.At).ThenByDescending(p => p.Before)
                .Select(p => (p.At, Shown(At(fan, p.At), PartAt(steps, p.At, p.Before))));
        }

        /// <summary>Quantiles of clearance with the shim that is in now, as this view shows them at a time when another part held.</summary>
        private IReadOnlyList<decimal> Shown(IReadOnlyList<decimal> mm, decimal partMm) =>
            [.. mm.Select(value => Shown(value + lobe.ShimPartNowMm, partMm)!.Value)];

        private decimal PartAt(List<ShimStep> steps, Distance at, bool before) => steps.Count == 0
            ? lobe.ShimPartNowMm
            : before ? steps[Math.Max(0, steps.FindIndex(s => s.From == at) - 1)].PartMm : steps.At(at);

        private static decimal[] At(IReadOnlyList<DriftOfLobe.FanUpright> fan, Distance at)
        {
            var next = Math.Clamp(fan.Count(p => p.EngineKm <= at), 1, fan.Count - 1);
            var (a, b) = (fan[next - 1], fan[next]);
            var span = (b.EngineKm - a.EngineKm).Metres;
            var share = span == 0 ? 0 : (at - a.EngineKm).Metres / span;
            return [.. a.Mm.Zip(b.Mm, (from, to) => from + (share * (to - from)))];
        }

        /// <summary>From 10 to 90 % as a bar along the limit that it drifts towards, with a tick at 50 %.</summary>
        private string ReachOf()
        {
            if (lobe.Forecast is not { } forecast || forecast.Leaves[0].EngineKm is not { } early || In(early) > across.To)
            {
                return "";
            }

            var limit = forecast.DriftMmPer10000Km < 0 ? lobe.LowerLimitMm : lobe.UpperLimitMm;
            var y = Y(limit.Millimetres + LimitShift(lobe.ShimPartNowMm));
            var end = forecast.Leaves[2].EngineKm is { } late && In(late) <= across.To ? $"H{Write(X(late))}m0 -4v8" : $"H{Write(Right)}";
            var tick = forecast.Leaves[1].EngineKm is { } even && In(even) <= across.To ? $"M{Write(X(even))} {Write(y - 8)}v16" : "";
            return $"M{Write(X(early))} {Write(y - 4)}v8M{Write(X(early))} {Write(y)}{end}{tick}";
        }
    }
}
