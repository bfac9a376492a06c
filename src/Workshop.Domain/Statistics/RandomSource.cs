namespace Workshop.Domain.Statistics;

/// <summary>
/// Random numbers for simulation, from a seed: the same seed gives the same numbers on every machine. Not for secrets.
/// </summary>
/// <remarks>
/// xoshiro256** 1.0 seeded by SplitMix64: Blackman and Vigna, Scrambled linear pseudorandom number generators, ACM Trans.
/// Math. Softw. 47 (2021). Only additions, multiplications, divisions and square roots are used, which IEEE 754 rounds
/// alike everywhere; the logarithm of a C library is not so bound.
/// </remarks>
public sealed class RandomSource
{
    private const double TwoToMinus53 = 1.0 / (1L << 53);
    private const double LogOfTwo = 0.69314718055994530942;

    private readonly ulong seed;
    private ulong s0;
    private ulong s1;
    private ulong s2;
    private ulong s3;

    /// <summary>Starts from a seed; every value is allowed.</summary>
    public RandomSource(ulong seed)
    {
        this.seed = seed;
        var mixer = seed;
        s0 = SplitMix(ref mixer);
        s1 = SplitMix(ref mixer);
        s2 = SplitMix(ref mixer);
        s3 = SplitMix(ref mixer);
    }

    /// <summary>Starts from a state of four words, as published test vectors do.</summary>
    /// <exception cref="ArgumentException">All four are zero, from which the generator never leaves.</exception>
    public RandomSource(ulong first, ulong second, ulong third, ulong fourth)
    {
        if ((first | second | third | fourth) == 0)
        {
            throw new ArgumentException("At least one word of the state must differ from zero.");
        }

        (s0, s1, s2, s3) = (first, second, third, fourth);
        seed = first ^ ulong.RotateLeft(second, 16) ^ ulong.RotateLeft(third, 32) ^ ulong.RotateLeft(fourth, 48);
    }

    /// <summary>
    /// A source of its own for one named part of a simulation. It depends on the seed and the name only, so that a part
    /// keeps its numbers when another part draws more or fewer.
    /// </summary>
    public RandomSource Stream(string name)
    {
        ArgumentNullException.ThrowIfNull(name);
        unchecked
        {
            // FNV-1a over UTF-16 code units; string.GetHashCode differs from run to run.
            var hash = 14695981039346656037UL;
            foreach (var unit in name)
            {
                hash = (hash ^ unit) * 1099511628211UL;
            }

            var mixer = seed;
            return new RandomSource(SplitMix(ref mixer) ^ hash);
        }
    }

    /// <summary>64 random bits.</summary>
    public ulong Bits()
    {
        unchecked
        {
            var bits = ulong.RotateLeft(s1 * 5, 7) * 9;
            var shifted = s1 << 17;
            s2 ^= s0;
            s3 ^= s1;
            s1 ^= s2;
            s0 ^= s3;
            s2 ^= shifted;
            s3 = ulong.RotateLeft(s3, 45);
            return bits;
        }
    }

    /// <summary>Evenly spread from 0 to below 1, in steps of 2^-53.</summary>
    public double Uniform() => (Bits() >> 11) * TwoToMinus53;

    /// <summary>Evenly spread from one value to below another.</summary>
    /// <param name="from">The least value drawn.</param>
    /// <param name="to">Above <paramref name="from"/>.</param>
    public double Uniform(double from, double to)
    {
        ArgumentOutOfRangeException.ThrowIfGreaterThanOrEqual(from, to);
        return from + ((to - from) * Uniform());
    }

    /// <summary>A whole number, each as likely.</summary>
    /// <param name="least">The least drawn.</param>
    /// <param name="most">The greatest drawn, not below <paramref name="least"/>.</param>
    public int WholeNumber(int least, int most)
    {
        ArgumentOutOfRangeException.ThrowIfGreaterThan(least, most);
        var choices = (ulong)((long)most - least + 1);

        // Lemire, ACM Trans. Model. Comput. Simul. 29 (2019): the high word of a product, the uneven rest drawn again.
        var uneven = unchecked(0UL - choices) % choices;
        while (true)
        {
            var high = Math.BigMul(Bits(), choices, out var low);
            if (low >= uneven)
            {
                return (int)(least + (long)high);
            }
        }
    }

    /// <summary>True with a probability of 0 to 1.</summary>
    public bool Chance(double probability)
    {
        if (!(probability >= 0 && probability <= 1))
        {
            throw new ArgumentOutOfRangeException(nameof(probability), probability, "A probability lies from 0 to 1.");
        }

        return Uniform() < probability;
    }

    /// <summary>One of the choices, each as likely.</summary>
    /// <exception cref="ArgumentException">There are none.</exception>
    public T Pick<T>(IReadOnlyList<T> choices)
    {
        ArgumentNullException.ThrowIfNull(choices);
        return choices.Count > 0
            ? choices[WholeNumber(0, choices.Count - 1)]
            : throw new ArgumentException("There is nothing to choose from.", nameof(choices));
    }

    /// <summary>Normally distributed, by Marsaglia's polar method (SIAM Review 6 (1964) 260-264).</summary>
    /// <param name="mean">Any finite value.</param>
    /// <param name="standardDeviation">0 or above.</param>
    public double Normal(double mean, double standardDeviation)
    {
        Guard.Finite(mean, nameof(mean));
        ArgumentOutOfRangeException.ThrowIfNegative(standardDeviation);
        while (true)
        {
            var u = (2 * Uniform()) - 1;
            var v = (2 * Uniform()) - 1;
            var square = (u * u) + (v * v);
            if (square is > 0 and < 1)
            {
                return mean + (standardDeviation * (u * Math.Sqrt(-2 * Log(square) / square)));
            }
        }
    }

    /// <summary>Natural logarithm of a normal number in (0, 1], from mantissa and exponent: 2 artanh((m - 1) / (m + 1)).</summary>
    private static double Log(double value)
    {
        var bits = BitConverter.DoubleToInt64Bits(value);
        var exponent = (int)(bits >> 52) - 1023;
        var mantissa = BitConverter.Int64BitsToDouble((bits & 0xFFFFFFFFFFFFF) | (1023L << 52));
        if (mantissa > 1.4142135623730951)
        {
            mantissa /= 2;
            exponent++;
        }

        var ratio = (mantissa - 1) / (mantissa + 1);
        var square = ratio * ratio;
        var series = 0.0;
        for (var power = 23; power >= 1; power -= 2)
        {
            series = (series * square) + (1.0 / power);
        }

        return (exponent * LogOfTwo) + (2 * ratio * series);
    }

    private static ulong SplitMix(ref ulong state)
    {
        unchecked
        {
            state += 0x9E3779B97F4A7C15;
            var mixed = (state ^ (state >> 30)) * 0xBF58476D1CE4E5B9;
            mixed = (mixed ^ (mixed >> 27)) * 0x94D049BB133111EB;
            return mixed ^ (mixed >> 31);
        }
    }
}
