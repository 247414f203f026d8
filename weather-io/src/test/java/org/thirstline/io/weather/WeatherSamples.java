package org.thirstline.io.weather;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowable;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.EnumMap;
import java.util.Map;
import java.util.zip.GZIPOutputStream;
import org.assertj.core.api.ThrowableAssert.ThrowingCallable;
import org.thirstline.model.error.ErrorCode;
import org.thirstline.model.error.InputException;

/** Small invented files, one for each format, and what tests do with them. */
public final class WeatherSamples {

    static final String PLAIN = """
            # name: Larkmoor field station
            # latitude_deg: 52.1
            # elevation_m: 12
            # invented: true
            date,tmin_c,tmax_c,rain_mm,solar_mj_m2,wind_2m_m_s,vapour_pressure_kpa
            2012-02-28,1.2,9.8,0.4,7.25,3.1,0.7123
            2012-02-29,-0.5,8.1,,7.9,,0.65
            2012-03-01,2.0,11.0,12.7,6.0,2.2,
            """;

    static final String NASA_POWER = """
            -BEGIN HEADER-
            NASA/POWER CERES/MERRA2 Native Resolution Daily Data
            Dates (month/day/year): 01/01/2020 through 01/03/2020
            Location: Latitude  52.25   Longitude 5.5
            Elevation from MERRA-2: Average for 0.5 x 0.625 degree lat/lon region = 12.5 meters
            The value for missing source data that cannot be computed or is outside of the sources availability range: -999
            Parameter(s):
            T2M_MAX               MERRA-2 Temperature at 2 Meters Maximum (C)
            T2M_MIN               MERRA-2 Temperature at 2 Meters Minimum (C)
            PRECTOTCORR           MERRA-2 Precipitation Corrected (mm/day)
            ALLSKY_SFC_SW_DWN     CERES SYN1deg All Sky Surface Shortwave Downward Irradiance (MJ/m^2/day)
            RH2M                  MERRA-2 Relative Humidity at 2 Meters (%)
            WS10M                 MERRA-2 Wind Speed at 10 Meters (m/s)
            -END HEADER-
            YEAR,DOY,T2M_MAX,T2M_MIN,PRECTOTCORR,ALLSKY_SFC_SW_DWN,RH2M,WS10M
            2020,1,5.5,-1.2,0.0,2.5,88.1,3.4
            2020,2,6.5,0.2,1.25,-999,90.0,4.5
            2020,3,7.25,1.0,3.5,3.6,-999.0,5.5
            """;

    static final String DAYMET = """
            Latitude: 36.0133  Longitude: -84.2625
            X & Y on Lambert Conformal Conic: 1355394.59 -560478.62
            Tile: 11388
            Elevation: 279 meters
            All years; all variables; Daymet Software Version 4.0
            How to cite: see the provider

            year,yday,dayl (s),prcp (mm/day),srad (W/m^2),swe (kg/m^2),tmax (deg c),tmin (deg c),vp (Pa)
            2004,364,34600,0,200.0,0,10.5,-1.5,500
            2004,365,34620,3.25,150.0,0,9.0,0.5,620
            2005,1,34640,0,210.0,0,11.0,-0.5,560
            """;

    static final String KNMI = """
            BRON: KONINKLIJK NEDERLANDS METEOROLOGISCH INSTITUUT (KNMI)
            # STN         LON(east)   LAT(north)  ALT(m)      NAME
            # 260         5.180       52.100      1.90        De Bilt
            YYYYMMDD  = Datum / Date
            # STN,YYYYMMDD,   FG,   TG,   TN,   TX,   SQ,    Q,   RH,   UG,   UX,   UN

              260,19800101,   26,    9,   -8,   23,   -1,  253,   58,   93,  100,   85
              260,19800102,   15,   -4,  -21,   29,   27,  255,   -1,   95,   99,   86
              260,19800103,     ,  -23,  -63,    5,    0,     ,   13,   97,   99,   89
            """;

    static final String USCRN = """
            54808 20120630  2.622  -88.37   40.05    35.1    18.2    26.7    26.9     0.0    28.12 C    45.2    16.5    29.4    92.1    30.2    60.1   0.150   0.170 -99.000   0.250   0.300    28.9    28.1    26.0    24.0    20.0
            54808 20120701  2.622  -88.37   40.05    36.0 -9999.0 -9999.0    27.9 -9999.0 -9999.00 C    45.2    16.5    29.4 -9999.0 -9999.0 -9999.0   0.150   0.170   0.200   0.250   0.300    28.9    28.1    26.0    24.0    20.0
            54808 20120702  2.622  -88.37   40.05    34.0    20.0    27.0    27.1    12.7    20.50 C    45.2    16.5    29.4    90.0    40.0    66.0   0.150   0.170   0.200   0.250   0.300    28.9    28.1    26.0    24.0    20.0
            """;

    static final String OPEN_METEO = """
            latitude,longitude,elevation,utc_offset_seconds,timezone,timezone_abbreviation
            52.54833,13.407822,38.0,3600,Europe/Berlin,CET

            time,temperature_2m_max (°F),temperature_2m_min (°F),precipitation_sum (inch),shortwave_radiation_sum (MJ/m²),sunshine_duration (s),wind_speed_10m_max (km/h),wind_speed_10m_mean (km/h),dew_point_2m_mean (°C)
            2014-10-28,53.6,41.0,0.100,7.80,30600.00,20.0,7.2,4.5
            2014-10-29,50.0,39.2,0.000,NaN,3600.00,18.0,3.6,NaN
            2014-10-30,51.8,32.0,NaN,6.5,NaN,NaN,NaN,3.5
            """;

    static final String GHCN_LONG = """
            USW00003870,20070101,AWND,56,,,W,
            USW00003870,20070101,PRCP,196,,,0,
            USW00003870,20070101,TMAX,189,,,0,
            USW00003870,20070101,TMIN,50,,,0,2400
            USW00003870,20070102,PRCP,0,T,,0,
            USW00003870,20070102,TMAX,111,,,0,
            USW00003870,20070102,TMIN,-11,,I,0,
            USW00003870,20070104,TMAX,122,,,0,
            USW00003870,20070104,TMIN,22,,,0,
            """;

    static final String GHCN_ACCESS = """
            "STATION","DATE","LATITUDE","LONGITUDE","ELEVATION","NAME","PRCP","PRCP_ATTRIBUTES","TMAX","TMAX_ATTRIBUTES","TMIN","TMIN_ATTRIBUTES","TSUN","TSUN_ATTRIBUTES"
            "USW00003870","2002-01-01","34.8831","-82.2203","286.5","GREER, SC US","    0",",,0","   72",",,0","  -61",",,0",,
            "USW00003870","2002-01-02","34.8831","-82.2203","286.5","GREER, SC US","   33",",,0","    0",",,0","  -39",",G,0","  120",",,X"
            """;

    static final String GHCN_WIDE = """
            "STATION","NAME","LATITUDE","LONGITUDE","ELEVATION","DATE","AWND","PRCP","TMAX","TMIN"
            "USW00014839","MILWAUKEE, WI US","42.95","-87.90","204.0","2012-07-04","8.9","0.00","100","77"
            "USW00014839","MILWAUKEE, WI US","42.95","-87.90","204.0","2012-07-06","","0.10","95",""
            "USW00014839","MILWAUKEE, WI US","42.95","-87.90","204.0","2012-07-05","10.1","","103","81"
            """;

    static final String DWD = """
            STATIONS_ID;MESS_DATUM;QN_3;  FX;  FM;QN_4; RSK;RSKF; SDK;SHK_TAG;  NM; VPM;  PM; TMK; UPM; TXK; TNK; TGK;eor
                   1358;20120730;  10;12.1; 4.5;    3;   2.5;   6; 8.250;   0; 3.3; 7.2; 863.60;  13.8; 62.00; 19.4;  8.0; 7.1;eor
                   1358;20120731;-999;-999;-999;    3;   0.0;   0;-999;   0; 3.3; 8.2; 863.60;  14.8; 70.00; 20.4;  9.0;-999;eor
                   1358;20120802;  10;12.1; 4.5;    3;-999.0;   0; 8.250;   0; 3.3; 7.2; 863.60;  13.8; 62.00; 19.4;  -0.5; 7.1;eor
            """;

    static final String MET_EIREANN = """
            Station Name: LARKMOOR
            Station Height: 71 M
            Latitude:53.428  ,Longitude: -6.241


            maxtp:  -  Maximum Air Temperature (C)
            glorad: -  Global Radiation (J/cm sq.)

            date,ind,maxtp,ind,mintp,igmin,gmin,ind,rain,cbl,wdsp,ind,hm,ind,ddhm,ind,hg,soil,pe,evap,smd_wd,smd_md,smd_pd,glorad
            29-jan-2024,0,8.2,0,2.9,0,2.9,0,3.2,975.2,4.0,0,10,0,150,0,18,6.285,0.3,0.4,0.0,-2.9,-10.0,196
            30-jan-2024,0,9.2,0,-0.9, , ,0,0.0,1017.5,10.0,0,7,0,290,0,12, , , , , , ,
            01-feb-2024,0,7.0,0,1.5,0,2.9,2, ,975.2,,0,10,0,150,0,18,6.285,0.3,0.4,0.0,-2.9,-10.0,250
            """;

    static final String ECAD = """
            EUROPEAN CLIMATE ASSESSMENT & DATASET (ECA&D), file created on 05-10-2021

            FILE FORMAT (MISSING VALUE CODE IS -9999):
            01-06 SOUID: Source identifier
            17-21 TX   : maximum temperature in 0.1 °C
            This is the blended series of station SWITZERLAND, GENEVE OBSERVATOIRE (STAID: 241).

             SOUID,    DATE,   TX, Q_TX
            209948,20120730,  251,    0
            209948,20120731,  305,    1
            209948,20120801,-9999,    9
            209948,20120802,  -12,    0
            """;

    static final String METEOSWISS = """
            station/location;date;gre000d0;hto000d0;nto000d0;prestad0;rre150d0;sre000d0;tre200d0;tre200dn;tre200dx;ure200d0
            SIO;20201229;35;0;-;949.8;1.5;32;0.1;-3;2.5;81.4
            SIO;20201230;-;0;-;949.8;0;-;0.1;-4.5;1.5;-
            SIO;20201231;100;0;-;949.8;-;60;0.1;-3.25;2.5;81.4
            """;

    static final String GRIDMET = """
            id,longitude,latitude,timestamp,doy,pr,rmax,rmin,sph,srad,tmmn,tmmx,vs
            20120730,-94.82,38.88,2012-07-30,212,0,77.7,43.3,0.0126,250.5,293.15,303.15,3.5
            20120731,-94.82,38.88,2012-07-31,213,12.5,78.7,45.3,0.0136,300.0,294.15,305.15,4.5
            20120801,-94.82,38.88,2012-08-01,214,0,79.7,47.3,0.0146,100.0,295.15,307.15,5.5
            """;

    static final String AGRIMET = """
            USBR Hydromet/AgriMet data
            BEGIN DATA
            DATE      ,  FALN MN ,  FALN MX ,  FALN SR ,  FALN YM ,  FALN UA ,  FALN PP
            07/30/2012,  50.00   ,  86.00   ,  600.00  ,  41.00   ,  10.00   ,  0.10
            07/31/2012,  51.80   ,  87.80   ,  NO RECORD , 42.80   , NO RECORD ,  0.00
            08/01/2012,  53.60   ,  89.60   ,  500.00  ,  998877.00 ,  5.00  ,  0.00
            END DATA
            """;

    static final String COAGMET = """
            name,date,tavg,tmax,tmin,rhmax,rhmin,solar,windrun,et_asce,et_pk,et_asce0
            hyk02,2020-07-01,20.1,29.4,12.9,0.929,0.47,263.1,203.1,7.9,7.9,6.2
            hyk02,2020-07-02,21.1,31.0,13.0,1.021,0.568,307.4,314.7,8.7,8.7,6.1
            hyk02,2020-07-03,22.1,32.0,,0.8,0.3,,,8.7,8.7,6.1
            """;

    static final String GEOSPHERE = """
            time,station,tl_mittel,tlmin,tlmax,rr,so_h,cglo_j,rf_mittel,vv_mittel
            2020-07-01T00:00+00:00,30,18.2,12.1,25.0,-1,10.5,2300,60,2.5
            2020-07-02T00:00+00:00,30,19.2,13.1,26.0,12.4,,2400,65,
            2020-07-03T00:00+00:00,30,20.2,14.1,,0,9.5,1800,70,1.5
            """;

    static final String NASA_POWER_JSON = """
            {"type":"Feature","geometry":{"type":"Point","coordinates":[5.5,52.25,12.5]},"properties":{"parameter":{
            "T2M_MAX":{"20200101":5.5,"20200102":6.5,"20200103":7.25},"T2M_MIN":{"20200101":-1.2,"20200102":0.2,"20200103":1.0},
            "PRECTOTCORR":{"20200101":0.0,"20200102":1.25,"20200103":3.5},
            "ALLSKY_SFC_SW_DWN":{"20200101":2.5,"20200102":-999.0,"20200103":3.6},
            "RH2M":{"20200101":88.1,"20200102":90.0,"20200103":-999.0},"WS10M":{"20200101":3.4,"20200102":4.5,"20200103":5.5}}},
            "header":{"title":"NASA/POWER","fill_value":-999.0,"start":"20200101","end":"20200103"},
            "parameters":{"ALLSKY_SFC_SW_DWN":{"units":"MJ/m^2/day","longname":"x"}}}
            """;

    static final String OPEN_METEO_JSON = """
            {"latitude":52.54833,"longitude":13.407822,"elevation":38.0,"utc_offset_seconds":3600,"daily_units":{"time":"iso8601",
            "temperature_2m_max":"°F","temperature_2m_min":"°F","precipitation_sum":"inch","shortwave_radiation_sum":"MJ/m²",
            "sunshine_duration":"s","wind_speed_10m_mean":"km/h","dew_point_2m_mean":"°C"},"daily":{
            "time":["2014-10-28","2014-10-29","2014-10-30"],"temperature_2m_max":[53.6,50.0,51.8],
            "temperature_2m_min":[41.0,39.2,32.0],"precipitation_sum":[0.1,0.0,null],"shortwave_radiation_sum":[7.8,null,6.5],
            "sunshine_duration":[30600.0,3600.0,null],"wind_speed_10m_mean":[7.2,3.6,null],"dew_point_2m_mean":[4.5,null,3.5]}}
            """;

    private WeatherSamples() {}

    /** Lines of a month in fixed width: the given days have values, the others none. */
    static String dlyLine(String station, int year, int month, String element, Map<Integer, String> days) {
        StringBuilder line = new StringBuilder(String.format("%s%04d%02d%s", station, year, month, element));
        for (int day = 1; day <= 31; day++) {
            line.append(days.getOrDefault(day, "-9999   "));
        }
        return line.append('\n').toString();
    }

    static String ghcnDaily() {
        return dlyLine("USW00003870", 2001, 2, "TMAX", Map.of(27, "  123  0", 28, "   89  0"))
                + dlyLine("USW00003870", 2001, 2, "TMIN", Map.of(27, "  -12  0", 28, "  -50 I0"))
                + dlyLine("USW00003870", 2001, 2, "PRCP", Map.of(27, "    0T 0", 28, "  254  0"))
                + dlyLine("USW00003870", 2001, 3, "TMAX", Map.of(2, "  150  0"))
                + dlyLine("USW00003870", 2001, 3, "TMIN", Map.of(2, "   10  0"))
                + dlyLine("USW00003870", 2001, 3, "TSUN", Map.of(2, "  330  0"))
                + dlyLine("USW00003870", 2001, 3, "AWND", Map.of(2, "   36  0"));
    }

    /** One file of each format. */
    static Map<WeatherFormat, String> all() {
        Map<WeatherFormat, String> all = new EnumMap<>(WeatherFormat.class);
        all.put(WeatherFormat.PLAIN, PLAIN);
        all.put(WeatherFormat.NASA_POWER, NASA_POWER);
        all.put(WeatherFormat.DAYMET, DAYMET);
        all.put(WeatherFormat.KNMI, KNMI);
        all.put(WeatherFormat.USCRN, USCRN);
        all.put(WeatherFormat.OPEN_METEO, OPEN_METEO);
        all.put(WeatherFormat.GHCN_DAILY, ghcnDaily());
        all.put(WeatherFormat.GHCN_DAILY_LONG, GHCN_LONG);
        all.put(WeatherFormat.GHCN_DAILY_ACCESS, GHCN_ACCESS);
        all.put(WeatherFormat.GHCN_DAILY_WIDE, GHCN_WIDE);
        all.put(WeatherFormat.DWD, DWD);
        all.put(WeatherFormat.MET_EIREANN, MET_EIREANN);
        all.put(WeatherFormat.ECAD, ECAD);
        all.put(WeatherFormat.METEOSWISS, METEOSWISS);
        all.put(WeatherFormat.GRIDMET, GRIDMET);
        all.put(WeatherFormat.AGRIMET, AGRIMET);
        all.put(WeatherFormat.COAGMET, COAGMET);
        all.put(WeatherFormat.GEOSPHERE, GEOSPHERE);
        return all;
    }

    /** Writes text to a file whose name says nothing. */
    public static Path file(Path folder, String text) {
        return file(folder, text.getBytes(StandardCharsets.UTF_8));
    }

    static Path file(Path folder, byte[] bytes) {
        try {
            return Files.write(folder.resolve("file"), bytes);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    static byte[] gzip(String text) {
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        try (GZIPOutputStream zip = new GZIPOutputStream(bytes)) {
            zip.write(text.getBytes(StandardCharsets.UTF_8));
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return bytes.toByteArray();
    }

    /** Reads text as a file of unknown format. */
    public static RawWeather read(Path folder, String text) {
        return WeatherReaders.read(file(folder, text), ReadOptions.DEFAULT);
    }

    /** Asserts that an input is refused with a code, and returns the refusal for more. */
    public static InputException refused(ErrorCode code, ThrowingCallable call) {
        Throwable thrown = catchThrowable(call);
        assertThat(thrown).isInstanceOf(InputException.class);
        InputException error = (InputException) thrown;
        assertThat(error.code()).as(error.getMessage()).isEqualTo(code);
        return error;
    }
}
