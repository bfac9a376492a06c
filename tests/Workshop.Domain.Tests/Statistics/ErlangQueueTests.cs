using CsCheck;
using Workshop.Domain.Statistics;

namespace Workshop.Domain.Tests.Statistics;

public class ErlangQueueTests
{
    private const double Published = 1e-9;

    public static TheoryData<string> Rows =>
        [.. CheckValues.Lines("queues/erlang.csv").Skip(1).Where(line => line.Length > 0)];

    [Theory]
    [MemberData(nameof(Rows))]
    public void The_tabulated_lines_come_out(string row)
    {
        var cells = row.Split(',').Select(cell => double.Parse(cell, System.Globalization.CultureInfo.InvariantCulture)).ToArray();
        var (servers, load) = ((int)cells[0], cells[1]);

        Assert.Equal(cells[2], ErlangQueue.Blocked(servers, load), 1e-12);
        Assert.Equal(cells[3], ErlangQueue.Waits(servers, load), 1e-12);
        Assert.Equal(cells[4], ErlangQueue.MeanQueue(servers, load), 1e-9);
    }

    /// <summary>A public chart of Erlang C: 120 calls an hour of 3 min and 10 servers, "about 0.10".</summary>
    [Fact]
    public void A_hundred_and_twenty_calls_an_hour_before_ten_servers_wait_as_the_chart_has_it() =>
        Assert.Equal(0.10, ErlangQueue.Waits(10, 120 * 3 / 60.0), 0.005);

    /// <summary>Documentation of a computer algebra system: 30 calls an hour of 5 min, nine of ten without delay.</summary>
    [Fact]
    public void Thirty_calls_an_hour_of_five_minutes_want_six_servers()
    {
        var load = 30 * 5 / 60.0;

        Assert.Equal(6, ErlangQueue.ServersFor(load, 0.1));
        Assert.Equal(0.130371, ErlangQueue.Waits(5, load), 5e-7);
        Assert.Equal(0.047445, ErlangQueue.Waits(6, load), 5e-7);
    }

    /// <summary>
    /// The definition, summed term by term; one tutorial prints it without the sum in the denominator, which this would catch.
    /// </summary>
    [Fact]
    public void The_recursion_is_the_definition_with_its_whole_sum() => Gen.Select(Gen.Int[1, 30], Gen.Double[0.01, 0.99]).Sample(
        (servers, share) =>
        {
            var load = servers * share;
            var (term, below) = (1.0, 0.0);
            for (var k = 0; k < servers; k++)
            {
                below += term;
                term *= load / (k + 1);
            }

            var waiting = term * servers / (servers - load);
            Assert.Equal(waiting / (below + waiting), ErlangQueue.Waits(servers, load), Published);
            Assert.Equal(term / (below + term), ErlangQueue.Blocked(servers, load), Published);
        },
        iter: 1_000);

    [Fact]
    public void The_smallest_number_is_enough_and_one_less_is_not() => Gen.Select(Gen.Double[0, 40], Gen.Double[0.001, 0.9]).Sample(
        (load, most) =>
        {
            var servers = ErlangQueue.ServersFor(load, most);

            Assert.True(ErlangQueue.Waits(servers, load) <= most);
            Assert.True(servers == 1 || ErlangQueue.Waits(servers - 1, load) > most);
        },
        iter: 1_000);

    [Fact]
    public void A_load_as_large_as_the_servers_waits_for_ever()
    {
        Assert.Equal(1, ErlangQueue.Waits(3, 3));
        Assert.Equal(double.PositiveInfinity, ErlangQueue.MeanQueue(3, 4));
        Assert.Equal(0, ErlangQueue.Waits(3, 0));
    }

    [Theory]
    [InlineData(-1, 1.0)]
    [InlineData(2, -0.1)]
    [InlineData(2, double.NaN)]
    public void A_line_that_cannot_be_is_refused(int servers, double load) =>
        Assert.Throws<ArgumentOutOfRangeException>(() => ErlangQueue.Waits(servers, load));
}
