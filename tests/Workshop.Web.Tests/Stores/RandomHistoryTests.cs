using System.Net;
using CsCheck;
using Workshop.Tests.Hosting;
using Xunit;

namespace Workshop.Web.Tests.Stores;

/// <summary>
/// Random histories through the use cases on real PostgreSQL: a model of a few lines says what has to be where, and the database's own
/// check has to find nothing. A seeded sample.
/// </summary>
public sealed class RandomHistoryTests(WorkshopApp app) : IClassFixture<WorkshopApp>
{
    private const string Seed = "0000KPyDj2x3";
    private const int Places = 3;
    private static readonly string?[] Lots = [null, "A", "B"];

    private enum Act
    {
        Receive,
        Move,
        Scrap,
        Count,
        Reserve,
        Merge,
    }

    private sealed record Step(Act Act, int Part, int From, int To, int Lot, int Quantity);

    private static readonly Gen<Step> Steps =
        from act in Gen.Frequency(
            (6, Gen.Const(Act.Receive)), (5, Gen.Const(Act.Move)), (4, Gen.Const(Act.Scrap)), (3, Gen.Const(Act.Count)),
            (3, Gen.Const(Act.Reserve)), (1, Gen.Const(Act.Merge)))
        from part in Gen.Int[0, 1]
        from here in Gen.Int[0, Places - 1]
        from there in Gen.Int[1, Places - 1]
        from lot in Gen.Int[0, 2]
        from quantity in Gen.Int[1, 6]
        select new Step(act, part, here, (here + there) % Places, lot, quantity);

    [Fact]
    public async Task Whatever_happens_the_sum_of_the_ledger_is_what_is_on_hand()
    {
        await Steps.Array[25].SampleAsync(Play, seed: Seed, iter: 8, threads: 1);
    }

    private async Task Play(Step[] history)
    {
        var desk = await StoresDesk.Of(app);
        string[] parts = [await desk.Part(), await desk.Part()];
        string[] places = [await desk.Place(), await desk.Place(), await desk.Place()];
        var there = new Dictionary<(string Part, string Place, string? Lot), decimal>();
        decimal At(string part, string place, string? lot) => there.GetValueOrDefault((part, place, lot));
        foreach (var step in history)
        {
            var (part, here, to, lot) = (parts[step.Part], places[step.From], places[step.To], Lots[step.Lot]);
            var enough = At(part, here, lot) >= step.Quantity;
            switch (step.Act)
            {
                case Act.Receive:
                    await StoresDesk.Done(await desk.Receive(part, here, step.Quantity, lot));
                    there[(part, here, lot)] = At(part, here, lot) + step.Quantity;
                    break;
                case Act.Move:
                    if (IsDone(await desk.Move(part, here, to, step.Quantity, lot), enough))
                    {
                        there[(part, here, lot)] -= step.Quantity;
                        there[(part, to, lot)] = At(part, to, lot) + step.Quantity;
                    }

                    break;
                case Act.Scrap:
                    if (IsDone(await desk.Scrap(part, here, step.Quantity, lot), enough))
                    {
                        there[(part, here, lot)] -= step.Quantity;
                    }

                    break;
                case Act.Count when At(part, here, lot) > 0:
                    await Count(desk, part, here, lot, step.Quantity);
                    there[(part, here, lot)] = step.Quantity + 1;
                    break;
                case Act.Reserve:
                    await desk.Reserved(part, step.Quantity);
                    break;
                case Act.Merge when parts[0] != parts[1]:
                    await StoresDesk.Done(await desk.Merge(parts[0], parts[1]));
                    foreach (var ((_, place, of), quantity) in there.Where(t => t.Key.Part == parts[0]).ToList())
                    {
                        there[(parts[1], place, of)] = At(parts[1], place, of) + quantity;
                        there.Remove((parts[0], place, of));
                    }

                    parts[0] = parts[1];
                    break;
                default:
                    break;
            }
        }

        foreach (var part in parts.Distinct())
        {
            var known = (await desk.PartOf(part)).GetProperty("at").EnumerateArray().Where(l => l.GetProperty("onHand").GetDecimal() != 0).ToDictionary(
                l => (part, l.GetProperty("placeCode").GetString()!, l.GetProperty("lot").GetString()), l => l.GetProperty("onHand").GetDecimal());
            Assert.Equal(there.Where(t => t.Key.Part == part && t.Value != 0).OrderBy(t => t.Key), known.Select(k => KeyValuePair.Create(k.Key, k.Value)).OrderBy(t => t.Key)!);
            foreach (var lying in (await desk.PartOf(part)).GetProperty("at").EnumerateArray())
            {
                Assert.True(lying.GetProperty("reserved").GetDecimal() <= lying.GetProperty("onHand").GetDecimal());
            }
        }

        await StoresDesk.LedgerAgrees(app);
    }

    /// <summary>Counted one fewer than the step says, then one comes in before the count is closed and one more after it: in all one more.</summary>
    private static async Task Count(StoresDesk desk, string part, string place, string? lot, int quantity)
    {
        var count = await desk.Count(place);
        await StoresDesk.Done(await desk.CountLine(count, part, quantity - 1, lot));
        await StoresDesk.Done(await desk.Receive(part, place, 1, lot));
        await desk.ExplainAll(count);
        await StoresDesk.Done(await desk.Close(count));
        await StoresDesk.Done(await desk.Receive(part, place, 1, lot));
    }

    /// <summary>Done where enough lies there; refused by state or for a lot that must be named otherwise.</summary>
    private static bool IsDone(HttpResponseMessage answer, bool enough)
    {
        Assert.True(enough == answer.IsSuccessStatusCode, answer.ToString());
        Assert.True(enough || answer.StatusCode is HttpStatusCode.Conflict or HttpStatusCode.UnprocessableEntity, answer.ToString());
        return enough;
    }
}
