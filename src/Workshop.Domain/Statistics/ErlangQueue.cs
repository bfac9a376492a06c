namespace Workshop.Domain.Statistics;

/// <summary>
/// A line before several servers, by A. K. Erlang (1917): arrivals at random, service times exponential, whoever finds no server free
/// waits his turn. A rough guide where arrivals are booked: it then says more waiting than there is.
/// </summary>
public static class ErlangQueue
{
    private const int MostServers = 100_000;

    /// <summary>
    /// Erlang's B: the probability that all servers are taken where nobody waits. By the recursion B(0) = 1,
    /// B(k) = a B(k-1) / (k + a B(k-1)), which neither overflows nor cancels.
    /// </summary>
    /// <param name="servers">0 to 100,000.</param>
    /// <param name="load">Offered load: arrivals per unit of time, times mean service time; finite, not negative.</param>
    public static double Blocked(int servers, double load)
    {
        Check(servers, load);
        var blocked = 1.0;
        for (var k = 1; k <= servers; k++)
        {
            blocked = load * blocked / (k + (load * blocked));
        }

        return blocked;
    }

    /// <summary>
    /// Erlang's C: the probability that an arrival has to wait, c B / (c - a (1 - B)); 1 where the load reaches the servers, as
    /// the line then grows without end.
    /// </summary>
    /// <param name="servers">0 to 100,000.</param>
    /// <param name="load">As for <see cref="Blocked"/>.</param>
    public static double Waits(int servers, double load)
    {
        var blocked = Blocked(servers, load);
        return load >= servers ? 1 : servers * blocked / (servers - (load * (1 - blocked)));
    }

    /// <summary>How many wait on average, C a / (c - a); infinite where the load reaches the servers.</summary>
    /// <param name="servers">0 to 100,000.</param>
    /// <param name="load">As for <see cref="Blocked"/>.</param>
    public static double MeanQueue(int servers, double load) =>
        load >= servers ? double.PositiveInfinity : Waits(servers, load) * load / (servers - load);

    /// <summary>The smallest number of servers with which at most so many arrivals have to wait.</summary>
    /// <param name="load">As for <see cref="Blocked"/>; below 90,000.</param>
    /// <param name="mostWait">A probability above 0, below 1.</param>
    public static int ServersFor(double load, double mostWait)
    {
        if (!(mostWait is > 0 and < 1) || !(load is >= 0 and < 90_000))
        {
            throw new ArgumentOutOfRangeException(nameof(mostWait), $"A load of {load} and a probability of {mostWait}: 0 to 90,000, and between 0 and 1, are allowed.");
        }

        var servers = (int)Math.Floor(load) + 1;
        while (Waits(servers, load) > mostWait)
        {
            servers++;
        }

        return servers;
    }

    private static void Check(int servers, double load)
    {
        if (servers is < 0 or > MostServers)
        {
            throw new ArgumentOutOfRangeException(nameof(servers), servers, $"0 to {MostServers} servers are allowed.");
        }

        if (!double.IsFinite(load) || load < 0)
        {
            throw new ArgumentOutOfRangeException(nameof(load), load, "A load is finite and not negative.");
        }
    }
}
