using Workshop.Benchmarks.Calibration;
using Workshop.Benchmarks.Paths;

// calibration [seeds [valves [checks]]]: whether intervals and forecasts hold what they say, as a table.
// yardstick [valves ...]: the fit beside lmer's of R, in one run.
// otherwise arguments of BenchmarkDotNet, such as --filter '*Path*'.
switch (args.FirstOrDefault())
{
    case "calibration":
        CalibrationReport.Write(Console.Out, Number(1, 2), Number(2, 2000), args.Length > 3 ? Number(3, 0) : null);
        break;
    case "yardstick":
        Yardstick.Write(Console.Out, args.Length > 1 ? [.. args.Skip(1).Select((_, i) => Number(i + 1, 0))] : [1000, 8000, 64000]);
        break;
    default:
        BenchmarkDotNet.Running.BenchmarkSwitcher.FromAssembly(typeof(Program).Assembly).Run(args);
        break;
}

int Number(int place, int otherwise) =>
    args.Length > place ? int.Parse(args[place], System.Globalization.CultureInfo.InvariantCulture) : otherwise;
