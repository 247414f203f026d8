@echo off
rem Runs thirstline from its own checkout, building it first when it is missing or out of date.
setlocal
set "HOME_DIR=%~dp0"
set "JAR=%HOME_DIR%charts\target\thirstline.jar"
set "JAVA=java"
if defined JAVA_HOME set "JAVA=%JAVA_HOME%\bin\java"

"%JAVA%" --version >nul 2>&1
if errorlevel 1 (
  echo thirstline: Java 17 or newer is needed: "%JAVA%" was not found or is too old 1>&2
  exit /b 1
)
set "MAJOR=0"
for /f "tokens=2 delims=. " %%v in ('""%JAVA%" --version"') do if "%MAJOR%"=="0" call :first %%v
if %MAJOR% LSS 17 (
  echo thirstline: Java 17 or newer is needed: "%JAVA%" is version %MAJOR% 1>&2
  exit /b 1
)

set "STALE="
if not exist "%JAR%" set "STALE=not built yet (the first time takes a minute or more)"
if not defined STALE call :compare
if not defined STALE goto run

where mvn >nul 2>&1
if errorlevel 1 (
  if exist "%JAR%" (
    echo thirstline: sources have changed since the last build, but there is no mvn; running the old build 1>&2
    goto run
  )
  echo thirstline: not built yet, and Maven 3.8 or newer is needed to build: mvn was not found 1>&2
  exit /b 1
)
echo thirstline: %STALE%, building with Maven ... 1>&2
pushd "%HOME_DIR%"
call mvn -q -B -DskipTests -Dmaven.test.skip -pl charts -am package 1>&2
set "BUILT=%errorlevel%"
popd
if not "%BUILT%"=="0" (
  echo thirstline: the build failed; see the messages above 1>&2
  exit /b 1
)

:run
rem Short commands end before the optimising compiler pays; long ones need it.
set "FLAGS=-XX:+UseSerialGC -XX:TieredStopAtLevel=1 -XX:C1MaxInlineLevel=3 -XX:Tier3BackEdgeThreshold=10000"
for %%c in (age calibrate sensitivity sweep) do if "%~1"=="%%c" set "FLAGS=-XX:+UseParallelGC"
"%JAVA%" %FLAGS% -Xshare:auto -Djava.awt.headless=true -jar "%JAR%" %*
exit /b %errorlevel%

:first
if "%MAJOR%"=="0" set "MAJOR=%1"
exit /b

:compare
powershell -NoProfile -Command "Set-Location -LiteralPath $env:HOME_DIR; $built = (Get-Item -LiteralPath $env:JAR).LastWriteTime; $new = Get-ChildItem pom.xml, model\pom.xml, weather-io\pom.xml, calibration\pom.xml, charts\pom.xml, model\src\main, weather-io\src\main, calibration\src\main, charts\src\main -Recurse -File -ErrorAction SilentlyContinue | Where-Object { $_.LastWriteTime -gt $built } | Select-Object -First 1; if ($new) { exit 1 }" >nul 2>&1
if errorlevel 1 set "STALE=sources have changed"
exit /b
