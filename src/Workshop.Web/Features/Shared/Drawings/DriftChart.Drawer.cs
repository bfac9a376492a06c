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
        private const double MarkTextRoom = 84;

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

        public DriftChart Draw() => new()
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
            Marks = [.. Marks()],
            Estimate = string.Concat(lobe.Legs.Select(l => LineOf(l, beyond: false))),
            Ahead = lobe.Legs.Count == 0 ? "" : LineOf(lobe.Legs[^1], beyond: true),
            Band = BandOf(),
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
            var ends = Distances.Concat(lobe.Legs.SelectMany(l => l.Points.Select(p => p.EngineKm))).Select(In).ToList();
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

        private IEnumerable<ChartMark> Marks()
        {
            var (lastX, row) = (double.NegativeInfinity, 0);
            foreach (var change in lobe.Changes)
            {
                var x = X(change.EngineKm);
                row = x - lastX < MarkTextRoom ? 1 - row : 0;
                lastX = x;
                var text = change is { Cut: null, CameOutMm: { } cameOut, WentInMm: { } wentIn }
                    ? (wentIn - cameOut).ToString("shim +0.000;shim -0.000", CultureInfo.InvariantCulture)
                    : Words(change.Cut ?? LegCut.ShimUnmeasured);
                yield return new ChartMark(x, Top - 6 - (12 * row), text, change.Cut is not null);
            }
        }

        private string LineOf(DriftOfLobe.LegLine leg, bool beyond)
        {
            var last = leg.Readings[^1].EngineKm;
            var samples = Samples(leg, curved: false).Where(s => beyond ? s.At >= last : s.At <= last).Select(s => (s.At, s.Mm)).ToList();
            return samples.Count < 2 ? "" : "M" + string.Join('L', samples.Select(s => $"{Write(X(s.At))} {Write(Y(s.Mm))}"));
        }

        private string BandOf()
        {
            var samples = lobe.Legs.Count == 0 ? [] : Samples(lobe.Legs[^1], curved: true).Where(s => s.Lower is not null).ToList();
            return samples.Count < 2
                ? ""
                : "M" + string.Join('L', samples.Select(s => $"{Write(X(s.At))} {Write(Y(s.Upper!.Value))}"))
                    + "L" + string.Join('L', samples.AsEnumerable().Reverse().Select(s => $"{Write(X(s.At))} {Write(Y(s.Lower!.Value))}")) + "Z";
        }

        /// <summary>
        /// The line at its ends, at the last reading and on both sides of every swap, as this view shows it; for its band, which
        /// is curved, at the points between as well.
        /// </summary>
        private IEnumerable<(Distance At, decimal Mm, decimal? Lower, decimal? Upper)> Samples(DriftOfLobe.LegLine leg, bool curved)
        {
            if (leg.Points.Count < 2)
            {
                yield break;
            }

            var steps = leg.ShimSteps.Select(s => new ShimStep(s.EngineKm, s.PartMm)).ToList();
            var at = (curved ? leg.Points : [leg.Points[0], leg.Points[^1]]).Select(p => p.EngineKm).Append(leg.Readings[^1].EngineKm).Concat(steps.Skip(1).Select(s => s.From))
                .Distinct().Order();
            foreach (var distance in at)
            {
                var point = Between(leg.Points, distance);
                if (steps.FindIndex(s => s.From == distance) is var swap and > 0)
                {
                    yield return Show(distance, point, steps[swap - 1].PartMm);
                }

                yield return Show(distance, point, steps.At(distance));
            }
        }

        private (Distance, decimal, decimal?, decimal?) Show(Distance at, DriftOfLobe.Point point, decimal part) =>
            (at, Shown(point.Mm, part)!.Value, Shown(point.LowerMm, part), Shown(point.UpperMm, part));

        private static DriftOfLobe.Point Between(IReadOnlyList<DriftOfLobe.Point> points, Distance at)
        {
            var next = Math.Clamp(points.Count(p => p.EngineKm <= at), 1, points.Count - 1);
            var (a, b) = (points[next - 1], points[next]);
            var span = (b.EngineKm - a.EngineKm).Metres;
            var share = span == 0 ? 0 : (at - a.EngineKm).Metres / span;
            return new DriftOfLobe.Point(at, Mix(a.Mm, b.Mm)!.Value, Mix(a.LowerMm, b.LowerMm), Mix(a.UpperMm, b.UpperMm));

            decimal? Mix(decimal? from, decimal? to) => from + (share * (to - from));
        }

        private string ReachOf()
        {
            if (lobe.Estimate.Reaches is not { Passed: false } reaches)
            {
                return "";
            }

            var y = Y(reaches.LimitMm + LimitShift(lobe.ShimPartNowMm));
            var bar = $"M{Write(X(reaches.EarliestEngineKm))} {Write(y - 4)}v8M{Write(X(reaches.EarliestEngineKm))} {Write(y)}H{Write(X(reaches.LatestEngineKm))}";
            var closed = In(reaches.LatestEngineKm) <= across.To ? "m0 -4v8" : "";
            var tick = In(reaches.EngineKm) <= across.To ? $"M{Write(X(reaches.EngineKm))} {Write(y - 8)}v16" : "";
            return bar + closed + tick;
        }
    }
}
