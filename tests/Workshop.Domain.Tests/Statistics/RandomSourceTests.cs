using Workshop.Domain.Statistics;

namespace Workshop.Domain.Tests.Statistics;

public class RandomSourceTests
{
    /// <summary>
    /// The reference output of xoshiro256** from the state 1, 2, 3, 4, as in the tests of the Rust crate rand_xoshiro,
    /// taken there from the authors' C program.
    /// </summary>
    [Fact]
    public void The_generator_gives_the_published_output()
    {
        var random = new RandomSource(1, 2, 3, 4);

        ulong[] published =
        [
            11520, 0, 1509978240, 1215971899390074240, 1216172134540287360, 607988272756665600,
            16172922978634559625, 8476171486693032832, 10595114339597558777, 2904607092377533576,
        ];
        Assert.Equal(published, published.Select(_ => random.Bits()));
    }

    /// <summary>
    /// The state after seeding is SplitMix64's published output for 1234567 (Rosetta Code, Pseudo-random
    /// numbers/Splitmix64), so the two sources go on alike.
    /// </summary>
    [Fact]
    public void A_seed_fills_the_state_as_published()
    {
        var seeded = new RandomSource(1234567);
        var stated = new RandomSource(
            6457827717110365317, 3203168211198807973, 9817491932198370423, 4593380528125082431);

        Assert.Equal(Enumerable.Range(0, 20).Select(_ => stated.Bits()), Enumerable.Range(0, 20).Select(_ => seeded.Bits()));
    }

    /// <summary>Computed apart, in Python, with its C library's logarithm.</summary>
    [Fact]
    public void Normal_numbers_agree_with_an_independent_computation()
    {
        var random = new RandomSource(4417);

        double[] expected =
        [
            0.3313225918149154, -0.9758758262591707, -0.22369689494791395, 1.4649344064924603, 0.35259802532714085,
        ];
        Assert.All(expected, value => Assert.Equal(value, random.Normal(0, 1), 1e-14));
    }

    [Fact]
    public void The_first_uniform_numbers_are_exactly_these_everywhere()
    {
        var random = new RandomSource(4417);

        Assert.Equal([0.9669681115818067, 0.6324609095261298, 0.1134382053405748], [random.Uniform(), random.Uniform(), random.Uniform()]);
    }

    /// <summary>Kolmogorov's distance: 1.95 / sqrt(n) is exceeded by chance once in a thousand (asymptotic table).</summary>
    [Theory]
    [InlineData(1)]
    [InlineData(77)]
    public void Normal_numbers_are_normal(ulong seed)
    {
        const int Count = 200_000;
        var random = new RandomSource(seed);
        var sorted = Enumerable.Range(0, Count).Select(_ => random.Normal(3, 0.5)).Order().ToArray();

        var distance = sorted.Select((value, i) =>
        {
            var expected = MathNet.Numerics.Distributions.Normal.CDF(3, 0.5, value);
            return Math.Max(Math.Abs(expected - ((double)i / Count)), Math.Abs(expected - ((i + 1.0) / Count)));
        }).Max();

        Assert.True(distance < 1.95 / Math.Sqrt(Count), $"distance {distance}");
        var summary = UnivariateSummary.Of(sorted).Value;
        Assert.Equal(3, summary.Mean.Value, 4 * summary.Mean.StandardError);
    }

    [Fact]
    public void Whole_numbers_are_even_over_their_range_and_keep_to_it()
    {
        var random = new RandomSource(5);
        var counts = new int[7];
        for (var i = 0; i < 70_000; i++)
        {
            counts[random.WholeNumber(-3, 3) + 3]++;
        }

        // 4.5 standard deviations of a count of 10,000.
        Assert.All(counts, count => Assert.InRange(count, 9580, 10_420));
        Assert.Equal(9, random.WholeNumber(9, 9));
        Assert.InRange(random.WholeNumber(int.MinValue, int.MaxValue), int.MinValue, int.MaxValue);
        Assert.Throws<ArgumentOutOfRangeException>(() => random.WholeNumber(2, 1));
    }

    [Fact]
    public void A_named_stream_does_not_depend_on_what_was_drawn_before()
    {
        var early = new RandomSource(9).Stream("engine 7");
        var late = new RandomSource(9);
        late.Bits();

        Assert.Equal(early.Bits(), late.Stream("engine 7").Bits());
        Assert.NotEqual(new RandomSource(9).Stream("engine 7").Bits(), new RandomSource(9).Stream("engine 8").Bits());
        Assert.NotEqual(new RandomSource(9).Stream("engine 7").Bits(), new RandomSource(10).Stream("engine 7").Bits());
    }

    [Fact]
    public void Chances_and_choices_keep_their_proportions()
    {
        var random = new RandomSource(11);

        Assert.InRange(Enumerable.Range(0, 10_000).Count(_ => random.Chance(0.3)), 2800, 3200);
        Assert.InRange(Enumerable.Range(0, 10_000).Count(_ => random.Pick(["a", "b"]) == "a"), 4800, 5200);
        Assert.False(random.Chance(0));
        Assert.True(random.Chance(1));
        Assert.Throws<ArgumentException>(() => random.Pick(Array.Empty<int>()));
        Assert.Throws<ArgumentOutOfRangeException>(() => random.Chance(double.NaN));
        Assert.Throws<ArgumentException>(() => new RandomSource(0, 0, 0, 0));
    }
}
